namespace ScreenStats.Statistics.Standardisation;

/// <summary>How the limits of a directly standardised rate are computed.</summary>
public enum DirectMethod
{
    /// <summary>Fay and Feuer's gamma limits: cover at least the nominal share; wide where one stratum has a large weight on few people.</summary>
    FayFeuer,

    /// <summary>The same with the mean of the weights in place of the largest (Tiwari, Clegg, Zou): narrower.</summary>
    Tiwari,

    /// <summary>Dobson's, from exact Poisson limits of all events.</summary>
    DobsonExact,

    /// <summary>Dobson's, from Byar's limits of all events.</summary>
    DobsonByar,

    /// <summary>The rate plus and minus normal errors: for many events only.</summary>
    Normal,
}
