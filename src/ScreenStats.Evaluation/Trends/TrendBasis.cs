namespace ScreenStats.Evaluation.Trends;

/// <summary>Which runs a series stands on.</summary>
public enum TrendBasis
{
    /// <summary>Every counted run.</summary>
    All = 0,

    /// <summary>Without the runs of lots that are flagged for what is followed: a burst of one of them is no rise of infection.</summary>
    WithoutFlaggedLots = 1,

    /// <summary>Without the runs that were taken because of an outbreak.</summary>
    Routine = 2,

    /// <summary>Without either.</summary>
    RoutineWithoutFlaggedLots = 3,
}
