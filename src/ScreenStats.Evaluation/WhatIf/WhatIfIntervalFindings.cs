using System.Collections.Immutable;
using System.Text.Json.Serialization;
using ScreenStats.Evaluation.Model;
using ScreenStats.Evaluation.WhatIf.Grids;

namespace ScreenStats.Evaluation.WhatIf;

/// <summary>What screening every so many days would give.</summary>
/// <param name="Days">Days that screens and false alarms are counted over.</param>
/// <param name="People">People that false alarms are counted among.</param>
/// <param name="Participation">Share of the screens due that are taken; null where there are no outcomes.</param>
/// <param name="ParticipationUndefined">Why there are no outcomes; null where there are.</param>
/// <param name="RemovedBySymptoms">Share of the infectious time that isolation because of symptoms takes away without any screen; null where it is not known.</param>
/// <param name="RemovedBySymptomsUndefined">Why it is not known; null where it is.</param>
/// <param name="AtStart">What is expected where the controls start; null where there are no outcomes.</param>
/// <param name="Outcomes">The same over some values, the start first.</param>
/// <param name="Grids">The grids that the page looks up.</param>
public sealed record WhatIfIntervalFindings(
    int Days, int People, double? Participation, string? ParticipationUndefined, double? RemovedBySymptoms, string? RemovedBySymptomsUndefined, IntervalOutcome? AtStart,
    ImmutableArray<IntervalOutcome> Outcomes, ImmutableArray<Grid> Grids) : IFinding
{
    /// <inheritdoc/>
    [JsonIgnore]
    public ImmutableArray<ITable> Tables => [OutcomeTable];

    /// <inheritdoc/>
    [JsonIgnore]
    public ImmutableArray<Sentence> Sentences => WhatIfSentences.Of(this);

    /// <summary>What intervals give over some values, as a table.</summary>
    [JsonIgnore]
    public Table<IntervalOutcome> OutcomeTable => WhatIfTables.Intervals(Outcomes);
}
