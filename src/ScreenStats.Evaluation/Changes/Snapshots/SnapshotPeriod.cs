using ScreenStats.Evaluation.Changes.Rows;

namespace ScreenStats.Evaluation.Changes.Snapshots;

/// <summary>Counts of the whole program in a period.</summary>
/// <param name="Start">Its first day.</param>
/// <param name="End">Its last day.</param>
/// <param name="Tests">Valid tests.</param>
/// <param name="Positives">Positive tests.</param>
/// <param name="Runs">Runs.</param>
/// <param name="Unusable">Inconclusive and invalid runs.</param>
/// <param name="Conclusive">Positives that were confirmed or refuted.</param>
/// <param name="Confirmed">Positives that were confirmed.</param>
public sealed record SnapshotPeriod(DateOnly Start, DateOnly End, long Tests, long Positives, long Runs, long Unusable, long Conclusive, long Confirmed)
{
    /// <summary>Trials and events of a measure; null where they are not counted by period.</summary>
    internal (long Trials, long Events)? Of(ChangeMeasure measure) => measure switch
    {
        ChangeMeasure.Positivity => (Tests, Positives),
        ChangeMeasure.InvalidRuns => (Runs, Unusable),
        ChangeMeasure.PositivePredictiveValue => (Conclusive, Confirmed),
        ChangeMeasure.FollowUp => (Positives, Conclusive),
        ChangeMeasure.ConfirmedPerValidTest => (Tests, Confirmed),
        ChangeMeasure.RefutedPerValidTest => (Tests, Conclusive - Confirmed),
        _ => null,
    };
}
