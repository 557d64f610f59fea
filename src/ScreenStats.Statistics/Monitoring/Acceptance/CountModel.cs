namespace ScreenStats.Statistics.Monitoring.Acceptance;

/// <summary>How the defective items of a sample vary.</summary>
public enum CountModel
{
    /// <summary>Each item on its own, of a large lot: binomial.</summary>
    Binomial,

    /// <summary>Events per item rather than defective items: Poisson with size times rate.</summary>
    Poisson,
}
