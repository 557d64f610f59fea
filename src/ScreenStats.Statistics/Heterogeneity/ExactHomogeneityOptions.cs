namespace ScreenStats.Statistics.Heterogeneity;

/// <summary>How far tables are added up, and how they are drawn where there are too many.</summary>
public sealed record ExactHomogeneityOptions
{
    /// <summary>The most partial tables kept at once before tables are drawn at random instead, 0 to 5,000,000; 0 always draws.</summary>
    public int MostPartialTables { get; init; } = 200_000;

    /// <summary>Random tables, 99 to 10,000,000.</summary>
    public int Replicates { get; init; } = 99_999;

    /// <summary>What the drawing starts from: the same seed gives the same p-value.</summary>
    public ulong Seed { get; init; } = 1;

    internal void Check()
    {
        if (MostPartialTables is < 0 or > 5_000_000)
            throw new ArgumentOutOfRangeException(nameof(MostPartialTables), MostPartialTables, "The partial tables must lie between 0 and 5,000,000.");
        if (Replicates is < 99 or > 10_000_000) throw new ArgumentOutOfRangeException(nameof(Replicates), Replicates, "The replicates must lie between 99 and 10,000,000.");
    }
}
