namespace ScreenStats.Statistics.Trends.Growth;

/// <summary>A straight line on the scale of a model, with the covariance of its two coefficients.</summary>
public sealed record FittedLine
{
    /// <summary>Makes a line.</summary>
    /// <param name="origin">The time at which the intercept holds, finite.</param>
    /// <param name="intercept">The value at the origin on the model's scale (log odds or log rate), finite.</param>
    /// <param name="slope">The change per unit of time, finite.</param>
    /// <param name="interceptVariance">The variance of the intercept, 0 or more.</param>
    /// <param name="covariance">The covariance of both, finite.</param>
    /// <param name="slopeVariance">The variance of the slope, 0 or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its domain.</exception>
    public FittedLine(double origin, double intercept, double slope, double interceptVariance, double covariance, double slopeVariance)
    {
        Guard.Finite(origin);
        Guard.Finite(intercept);
        Guard.Finite(slope);
        Guard.Finite(covariance);
        if (!(interceptVariance >= 0) || !double.IsFinite(interceptVariance)) throw new ArgumentOutOfRangeException(nameof(interceptVariance), interceptVariance, "A variance must be a finite number, 0 or more.");
        if (!(slopeVariance >= 0) || !double.IsFinite(slopeVariance)) throw new ArgumentOutOfRangeException(nameof(slopeVariance), slopeVariance, "A variance must be a finite number, 0 or more.");
        (Origin, Intercept, Slope, InterceptVariance, Covariance, SlopeVariance) = (origin, intercept, slope, interceptVariance, covariance, slopeVariance);
    }

    /// <summary>The time at which the intercept holds.</summary>
    public double Origin { get; }

    /// <summary>The value at the origin.</summary>
    public double Intercept { get; }

    /// <summary>The change per unit of time.</summary>
    public double Slope { get; }

    /// <summary>The variance of the intercept.</summary>
    public double InterceptVariance { get; }

    /// <summary>The covariance of intercept and slope.</summary>
    public double Covariance { get; }

    /// <summary>The variance of the slope.</summary>
    public double SlopeVariance { get; }

    /// <summary>The value at a time.</summary>
    /// <param name="time">Any time.</param>
    /// <returns>Intercept + slope (time - origin).</returns>
    public double At(double time) => Intercept + (Slope * (time - Origin));

    /// <summary>The variance of the value at a time.</summary>
    /// <param name="time">Any time.</param>
    /// <returns>0 or more.</returns>
    public double VarianceAt(double time)
    {
        var t = time - Origin;
        return Math.Max(0, InterceptVariance + (2 * t * Covariance) + (t * t * SlopeVariance));
    }

    /// <summary>The same line with its intercept at another time.</summary>
    /// <param name="origin">The time, finite.</param>
    /// <returns>The line.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The time is not finite, or so far that the value there is not.</exception>
    public FittedLine From(double origin) => new(origin, At(origin), Slope, VarianceAt(origin), Covariance + ((origin - Origin) * SlopeVariance), SlopeVariance);
}
