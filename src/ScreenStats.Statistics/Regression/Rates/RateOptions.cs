namespace ScreenStats.Statistics.Regression.Rates;

/// <summary>How a regression of rates is fitted.</summary>
public sealed record RateOptions
{
    /// <summary>Whether the model has a constant, as its first coefficient.</summary>
    public bool Constant { get; init; } = true;

    /// <summary>What the standard errors allow for.</summary>
    public RateCovariance Covariance { get; init; } = RateCovariance.Model;

    /// <summary>The confidence of the limits of the coefficients, in (0, 1).</summary>
    public double Confidence { get; init; } = 0.95;

    internal void Check()
    {
        Guard.Confidence(Confidence);
        if (!Enum.IsDefined(Covariance)) throw new ArgumentOutOfRangeException(nameof(Covariance), Covariance, "Not a covariance this library knows.");
    }
}
