namespace ScreenStats.Evaluation.Changes.Rows;

/// <summary>What of two evaluations a difference compares, so that no run stands on both sides.</summary>
public enum ChangeBasis
{
    /// <summary>The whole of both: their spans share no day.</summary>
    SeparateSpans = 0,

    /// <summary>The earlier evaluation with what was added since: the later counts less the earlier ones.</summary>
    AddedSince = 1,

    /// <summary>The earlier evaluation with the periods of the later one that begin after its last day.</summary>
    PeriodsSince = 2,

    /// <summary>The periods that only the earlier evaluation has with those that only the later one has.</summary>
    PeriodsNotShared = 3,

    /// <summary>The whole of both, which share runs: there is a difference, but no interval for it.</summary>
    WholeValues = 4,
}
