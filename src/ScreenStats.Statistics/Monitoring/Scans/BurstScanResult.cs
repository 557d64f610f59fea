namespace ScreenStats.Statistics.Monitoring.Scans;

/// <summary>The strongest burst of events, and how often chance alone makes one as strong.</summary>
public sealed record BurstScanResult
{
    internal BurstScanResult(long events, long trials, Burst? strongest, double? chance, BurstScanOptions options, UndefinedReason? reason)
    {
        Events = events;
        Trials = trials;
        Strongest = strongest;
        ChanceUnderNoBurst = chance;
        Options = options;
        Reason = reason;
    }

    /// <summary>Events in all.</summary>
    public long Events { get; }

    /// <summary>Trials in all.</summary>
    public long Trials { get; }

    /// <summary>The window with the greatest likelihood ratio; null with a <see cref="Reason"/>.</summary>
    public Burst? Strongest { get; }

    /// <summary>
    /// The share of programs, the real one among them, whose strongest burst is at least as strong, when each event falls on any trial with the same
    /// chance; null without replicates or burst.
    /// </summary>
    public double? ChanceUnderNoBurst { get; }

    /// <summary>How many programs were simulated: fewer than asked for where the first ones said enough.</summary>
    public int Simulated { get; internal init; }

    /// <summary>What was searched and simulated.</summary>
    public BurstScanOptions Options { get; }

    /// <summary>Why there is no burst; null where there is one.</summary>
    public UndefinedReason? Reason { get; }
}
