namespace ScreenStats.Evaluation.Comparisons.Rows;

/// <summary>Which runs are compared.</summary>
public enum ComparisonBasis
{
    /// <summary>All counted runs.</summary>
    All = 0,

    /// <summary>Without the runs of lots that are flagged by the same measure.</summary>
    WithoutFlaggedLots = 1,

    /// <summary>Without the runs that were taken because of an outbreak.</summary>
    Routine = 2,

    /// <summary>Without both.</summary>
    RoutineWithoutFlaggedLots = 3,
}
