namespace ScreenStats.Statistics.Trends.RobustErrors;

/// <summary>How errors robust to dependence between neighbouring periods are made.</summary>
public sealed record NeweyWestOptions
{
    /// <summary>Whether the model has a constant, as its first coefficient.</summary>
    public bool Constant { get; init; } = true;

    /// <summary>Over how many periods neighbours lean on each other, 0 or more; null for <see cref="NeweyWest.UsualLag"/>.</summary>
    public int? Lag { get; init; }

    /// <summary>Whether the covariance is multiplied by rows / (rows - coefficients).</summary>
    public bool SmallSampleFactor { get; init; }

    /// <summary>The confidence of the limits of the coefficients, in (0, 1).</summary>
    public double Confidence { get; init; } = 0.95;

    internal void Check()
    {
        Guard.Confidence(Confidence);
        if (Lag is < 0) throw new ArgumentOutOfRangeException(nameof(Lag), Lag, "The lag must be 0 or more.");
    }
}
