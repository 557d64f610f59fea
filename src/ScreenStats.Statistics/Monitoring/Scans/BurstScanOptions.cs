namespace ScreenStats.Statistics.Monitoring.Scans;

/// <summary>Which windows are searched for a burst, and how its chance is simulated.</summary>
public sealed record BurstScanOptions
{
    /// <summary>The longest window in days, first and last day included, 1 or more.</summary>
    public int LongestDays { get; init; } = 28;

    /// <summary>Whether windows over all lots and all sites together are searched too; else each window is of one lot, of one site, or of both.</summary>
    public bool WholeProgram { get; init; } = true;

    /// <summary>Simulated programs without a burst, 0 to 1,000,000; with 0 there is no chance.</summary>
    public int Replicates { get; init; } = 999;

    /// <summary>
    /// How many are simulated first, 0 or more; where more than a fifth of them are as strong, the burst is nothing special and no more are simulated. With 0 all are.
    /// A chance below a fifth is never smaller for it, so it stays valid.
    /// </summary>
    public int FirstReplicates { get; init; }

    /// <summary>What the simulation starts from: the same seed gives the same chance, however many processors there are.</summary>
    public ulong Seed { get; init; } = 1;

    internal void Check()
    {
        if (LongestDays < 1) throw new ArgumentOutOfRangeException(nameof(LongestDays), LongestDays, "The longest window must be at least 1 day.");
        ArgumentOutOfRangeException.ThrowIfNegative(FirstReplicates);
        if (Replicates is < 0 or > 1_000_000) throw new ArgumentOutOfRangeException(nameof(Replicates), Replicates, "The replicates must lie between 0 and 1,000,000.");
    }
}
