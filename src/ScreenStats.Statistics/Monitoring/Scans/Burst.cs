namespace ScreenStats.Statistics.Monitoring.Scans;

/// <summary>A window of one lot, one site, or both, over some days.</summary>
public sealed record Burst
{
    internal Burst(int? lot, int? site, int firstDay, int lastDay, long observed, double expected, long trials, double score)
    {
        Lot = lot;
        Site = site;
        FirstDay = firstDay;
        LastDay = lastDay;
        Observed = observed;
        Expected = expected;
        Trials = trials;
        LogLikelihoodRatio = score;
    }

    /// <summary>The number of the lot; null for all lots together.</summary>
    public int? Lot { get; }

    /// <summary>The number of the site; null for all sites together.</summary>
    public int? Site { get; }

    /// <summary>The day of the first event of the window.</summary>
    public int FirstDay { get; }

    /// <summary>The day of the last event of the window.</summary>
    public int LastDay { get; }

    /// <summary>Events in the window.</summary>
    public long Observed { get; }

    /// <summary>Events expected in the window if the same rate held everywhere: all events times its share of the trials.</summary>
    public double Expected { get; }

    /// <summary>Trials in the window.</summary>
    public long Trials { get; }

    /// <summary>How much better two rates explain the events than one (<see cref="LikelihoodRatioScore"/>).</summary>
    public double LogLikelihoodRatio { get; }
}
