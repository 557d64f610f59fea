using System.Collections.Immutable;
using System.Text.Json.Serialization;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Controls;

/// <summary>Runs of control swabs: expected against observed, what failed ones leave in doubt, and starts without one.</summary>
public sealed record ControlFindings : IFinding
{
    /// <summary>Runs of control swabs.</summary>
    public required long Runs { get; init; }

    /// <summary>Negative controls of the whole program.</summary>
    public required ControlRow Negative { get; init; }

    /// <summary>Positive controls of the whole program.</summary>
    public required ControlRow Positive { get; init; }

    /// <summary>By site, by lot, by kit (those with a failed control) and by operator.</summary>
    public required ImmutableArray<ControlRow> Parts { get; init; }

    /// <summary>Runs of control swabs that did not show what they should.</summary>
    public required long Failed { get; init; }

    /// <summary>Those of them that no passed control of the same site and lot followed.</summary>
    public required long Open { get; init; }

    /// <summary>Screening runs of a site and lot between the passed controls around a failed one, each run once; an upper count, as days count whole.</summary>
    public required long RunsInDoubt { get; init; }

    /// <summary>Each failed control, in order of time.</summary>
    public required ImmutableArray<ControlBracket> Brackets { get; init; }

    /// <summary>Occasions for control swabs, and the share that passed without one.</summary>
    public required ImmutableArray<ControlDuty> Duties { get; init; }

    /// <summary>Lots, operators and sites that started without one.</summary>
    public required ImmutableArray<ControlStart> Missed { get; init; }

    /// <summary>Expected against observed.</summary>
    [JsonIgnore]
    public required Table<ControlRow> ControlTable { get; init; }

    /// <summary>The failed controls.</summary>
    [JsonIgnore]
    public required Table<ControlBracket> BracketTable { get; init; }

    /// <summary>The starts without a control.</summary>
    [JsonIgnore]
    public required Table<ControlStart> StartTable { get; init; }

    /// <summary>The shares of occasions without a control.</summary>
    [JsonIgnore]
    public required Table<ControlDuty> DutyTable { get; init; }

    /// <inheritdoc/>
    [JsonIgnore]
    public ImmutableArray<ITable> Tables => [ControlTable, BracketTable, DutyTable, StartTable];

    /// <inheritdoc/>
    [JsonIgnore]
    public required ImmutableArray<Sentence> Sentences { get; init; }
}
