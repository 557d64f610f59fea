namespace ScreenStats.Statistics.Monitoring.Sequential.RiskAdjusted;

/// <summary>A rate that is expected of some of the observations, and how many those are.</summary>
public readonly record struct ExpectedRate
{
    /// <summary>A rate with its weight.</summary>
    /// <param name="rate">The expected rate, in [0, 1].</param>
    /// <param name="weight">How many observations have it, or their share: finite, 0 or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument outside its domain.</exception>
    public ExpectedRate(double rate, double weight)
    {
        Guard.Probability(rate);
        if (!(weight >= 0) || !double.IsFinite(weight)) throw new ArgumentOutOfRangeException(nameof(weight), weight, "The weight must be a finite number, 0 or more.");
        Rate = rate;
        Weight = weight;
    }

    /// <summary>The expected rate.</summary>
    public double Rate { get; }

    /// <summary>How many observations have it, or their share.</summary>
    public double Weight { get; }
}
