namespace ScreenStats.Statistics.Standardisation;

/// <summary>How the limits of observed over expected are computed.</summary>
public enum IndirectMethod
{
    /// <summary>Exact Poisson limits of the observed events.</summary>
    Exact,

    /// <summary>Byar's limits of the observed events.</summary>
    Byar,
}
