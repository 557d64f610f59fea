using System.Collections.Immutable;
using System.Text.Json.Serialization;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Alarms;

/// <summary>The alarms that would have come had the rules run every day.</summary>
public sealed record AlarmFindings : IFinding
{
    /// <summary>The chance of any false alarm, ever, of each rule that may be looked at every day (of the proof of a rate above the limit: over sites, and over lots), where runs are independent.</summary>
    public required double FalseAlarmChance { get; init; }

    /// <summary>Days in which one false alarm of the cumulative sums is accepted.</summary>
    public required int FalseAlarmEveryDays { get; init; }

    /// <summary>Number of alarms raised.</summary>
    public required int Raised { get; init; }

    /// <summary>Those that are new or standing at the end of the data.</summary>
    public required int Open { get; init; }

    /// <summary>Every alarm ever raised, in the order of its first day.</summary>
    public required ImmutableArray<RaisedAlarm> Alarms { get; init; }

    /// <summary>The lots that are flagged or had an alarm that names them.</summary>
    public required ImmutableArray<LotAlarm> Lots { get; init; }

    /// <summary>The evidence against the lots that had an alarm of their own, day by day.</summary>
    public required ImmutableArray<LotEvidencePoint> Evidence { get; init; }

    /// <inheritdoc/>
    [JsonIgnore]
    public required ImmutableArray<ITable> Tables { get; init; }

    /// <inheritdoc/>
    [JsonIgnore]
    public required ImmutableArray<Sentence> Sentences { get; init; }
}
