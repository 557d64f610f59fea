using ScreenStats.Statistics.Trends.RobustErrors;

namespace ScreenStats.Statistics.Trends.Series;

/// <summary>How a trend is fitted to a series of counts.</summary>
public record SeriesOptions
{
    /// <summary>What grows by the same factor.</summary>
    public TrendScale Scale { get; init; } = TrendScale.Odds;

    /// <summary>What the limits allow for.</summary>
    public TrendLimits Limits { get; init; } = TrendLimits.Plain;

    /// <summary>With <see cref="TrendLimits.Robust"/>, over how many periods neighbours lean on each other; null for <see cref="NeweyWest.UsualLag"/>.</summary>
    public int? Lag { get; init; }

    /// <summary>With <see cref="TrendLimits.Robust"/>, whether the covariance is multiplied by periods / (periods - coefficients).</summary>
    public bool SmallSampleFactor { get; init; }

    /// <summary>With <see cref="TrendLimits.Quasi"/>, the least dispersion taken: 0 takes what the data show, 1 never calls a series more regular than chance.</summary>
    public double LeastDispersion { get; init; }

    /// <summary>With <see cref="TrendLimits.Quasi"/> or <see cref="TrendLimits.Robust"/>, whether limits use Student's distribution (periods less coefficients) for the normal one.</summary>
    public bool Student { get; init; }

    /// <summary>The confidence of all limits, in (0, 1).</summary>
    public double Confidence { get; init; } = 0.95;

    internal void Check()
    {
        Guard.Confidence(Confidence);
        if (!Enum.IsDefined(Scale)) throw new ArgumentOutOfRangeException(nameof(Scale), Scale, "Not a scale this library knows.");
        if (!Enum.IsDefined(Limits)) throw new ArgumentOutOfRangeException(nameof(Limits), Limits, "Not limits this library knows.");
        if (Lag is < 0) throw new ArgumentOutOfRangeException(nameof(Lag), Lag, "The lag must be 0 or more.");
        if (!(LeastDispersion >= 0) || !double.IsFinite(LeastDispersion))
            throw new ArgumentOutOfRangeException(nameof(LeastDispersion), LeastDispersion, "The least dispersion must be a finite number, 0 or more.");
    }

    internal string Words() => Scale switch { TrendScale.Odds => "logistic trend", TrendScale.Share => "log-binomial trend", _ => "Poisson trend" } + Limits switch
    {
        TrendLimits.Quasi => ", errors widened by the dispersion",
        TrendLimits.Robust => ", errors robust to dependence between periods (Newey-West)",
        TrendLimits.ProfileLikelihood => ", profile likelihood",
        _ => string.Empty,
    } + (Student && Limits is TrendLimits.Quasi or TrendLimits.Robust ? ", Student's distribution" : string.Empty);
}
