namespace ScreenStats.Counting.Programs.Cadence;

/// <summary>How infectious a person is at a viral load above the threshold of infectiousness.</summary>
public enum InfectiousnessKind
{
    /// <summary>As the logarithm of the viral load above the threshold.</summary>
    LogAboveThreshold,

    /// <summary>In proportion to the viral load.</summary>
    Proportional,

    /// <summary>The same at every viral load above the threshold.</summary>
    Step,
}
