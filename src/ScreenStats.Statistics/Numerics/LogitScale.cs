namespace ScreenStats.Statistics.Numerics;

/// <summary>Fractions on the scale of ln(p / (1 - p)).</summary>
internal static class LogitScale
{
    public static double Logit(double p) => Math.Log(p / (1 - p));

    public static double Fraction(double logit) => 1 / (1 + Math.Exp(-logit));

    /// <summary>
    /// The logit interval around a centre strictly inside (0, 1), stretched to hold the value: at a value of 0 or 1 it ends there.
    /// </summary>
    public static Interval Interval(double value, double centre, double logitVariance, double confidence) =>
        Of(value, Logit(centre), logitVariance, confidence);

    /// <summary>The same with the centre given as a logit.</summary>
    public static Interval Of(double value, double centreLogit, double logitVariance, double confidence)
    {
        var half = Quantile.Normal(confidence) * Math.Sqrt(logitVariance);
        return new Interval(Fraction(centreLogit - half), Fraction(centreLogit + half)).Including(value);
    }
}
