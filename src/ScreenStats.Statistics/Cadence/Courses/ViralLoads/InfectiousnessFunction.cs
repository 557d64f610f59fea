namespace ScreenStats.Statistics.Cadence.Courses.ViralLoads;

/// <summary>How much is passed on at a viral load above a threshold; nothing below it.</summary>
public enum InfectiousnessFunction
{
    /// <summary>In proportion to how far the logarithm lies above the threshold.</summary>
    LogAboveThreshold,

    /// <summary>In proportion to the load itself. A few people with high loads make up nearly all: simulate very many people.</summary>
    Proportional,

    /// <summary>The same at any load above the threshold.</summary>
    Step,
}
