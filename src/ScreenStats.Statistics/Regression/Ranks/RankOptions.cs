namespace ScreenStats.Statistics.Regression.Ranks;

/// <summary>How ranks are drawn.</summary>
public sealed record RankOptions
{
    /// <summary>Draws of all groups, 100 to 1,000,000.</summary>
    public int Replicates { get; init; } = 4000;

    /// <summary>What the drawing starts from: the same seed gives the same ranks.</summary>
    public ulong Seed { get; init; } = 1;

    /// <summary>The probability of the interval of a rank, in (0, 1).</summary>
    public double Confidence { get; init; } = 0.95;

    internal void Check()
    {
        Guard.Confidence(Confidence);
        if (Replicates is < 100 or > 1_000_000) throw new ArgumentOutOfRangeException(nameof(Replicates), Replicates, "The replicates must lie between 100 and 1,000,000.");
    }
}
