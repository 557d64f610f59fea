namespace ScreenStats.Statistics.Monitoring.Sequential.CountSums;

/// <summary>A binomial cumulative sum: groups of one size, and what is taken off each group's count of events.</summary>
public sealed record BinomialDesign
{
    internal BinomialDesign(long groupSize, double reference, double limit, long units)
    {
        GroupSize = groupSize;
        Reference = reference;
        Limit = limit;
        Units = units;
        ReferenceOnLattice = Math.Round(reference * units) / units;
    }

    /// <summary>Observations in a group, n.</summary>
    public long GroupSize { get; }

    /// <summary>The reference value k, as asked.</summary>
    public double Reference { get; }

    /// <summary>The reference value of which the average run lengths are exact: k, or the multiple of 1 / <see cref="Units"/> nearest to it.</summary>
    public double ReferenceOnLattice { get; }

    /// <summary>The limit h.</summary>
    public double Limit { get; }

    /// <summary>Steps of the lattice to 1.</summary>
    public long Units { get; }
}
