namespace ScreenStats.Statistics.Monitoring.Sequential.Evidence;

/// <summary>A lot's share of the tests on which an event of a stratum could have fallen.</summary>
public readonly record struct LotShare
{
    /// <summary>A share.</summary>
    /// <param name="lot">The lot's number, from 0.</param>
    /// <param name="weight">Its follow-up-weighted valid tests in the stratum, finite, 0 or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number below 0, or a weight that is negative or not finite.</exception>
    public LotShare(int lot, double weight)
    {
        Guard.NotNegative(lot);
        if (!(weight >= 0) || !double.IsFinite(weight))
            throw new ArgumentOutOfRangeException(nameof(weight), weight, "The weight of a lot must be a finite number, 0 or more.");
        Lot = lot;
        Weight = weight;
    }

    /// <summary>The lot's number.</summary>
    public int Lot { get; }

    /// <summary>Its follow-up-weighted valid tests in the stratum.</summary>
    public double Weight { get; }
}
