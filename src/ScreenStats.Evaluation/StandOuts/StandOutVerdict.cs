namespace ScreenStats.Evaluation.StandOuts;

/// <summary>What is to be said of a lot or site by one measure, the gravest first.</summary>
public enum StandOutVerdict
{
    /// <summary>It found fewer cases, or failed more positive controls, than the others: infected people may be missed.</summary>
    MayMissInfections = 0,

    /// <summary>A material excess within its sites and weeks (of sites: lots and weeks).</summary>
    StandsOut = 1,

    /// <summary>Flagged among all, but no material excess is shown within its sites and weeks, or nothing was there to compare it with.</summary>
    StandsOutOverAll = 2,

    /// <summary>More than chance readily makes, but the excess may be small.</summary>
    NotMaterial = 3,

    /// <summary>Compared, and no more than chance readily makes.</summary>
    DoesNotStandOut = 4,

    /// <summary>Nothing to compare it with.</summary>
    NotCompared = 5,
}
