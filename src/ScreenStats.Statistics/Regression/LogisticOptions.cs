namespace ScreenStats.Statistics.Regression;

/// <summary>How a logistic regression is fitted.</summary>
public sealed record LogisticOptions
{
    /// <summary>Whether the model has a constant, as its first coefficient.</summary>
    public bool Constant { get; init; } = true;

    /// <summary>What the standard errors allow for.</summary>
    public CovarianceKind Covariance { get; init; } = CovarianceKind.Binomial;

    /// <summary>The confidence of the limits of the coefficients, in (0, 1).</summary>
    public double Confidence { get; init; } = 0.95;

    internal void Check()
    {
        Guard.Confidence(Confidence);
        if (!Enum.IsDefined(Covariance)) throw new ArgumentOutOfRangeException(nameof(Covariance), Covariance, "Not a covariance this library knows.");
    }
}
