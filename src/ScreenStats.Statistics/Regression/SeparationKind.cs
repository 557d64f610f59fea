namespace ScreenStats.Statistics.Regression;

/// <summary>Whether the terms tell events from the others without exception.</summary>
public enum SeparationKind
{
    /// <summary>No: all coefficients are finite.</summary>
    None,

    /// <summary>In some rows, for instance those of a site without any event: some coefficients have no bound.</summary>
    Partial,

    /// <summary>In all rows.</summary>
    Complete,
}
