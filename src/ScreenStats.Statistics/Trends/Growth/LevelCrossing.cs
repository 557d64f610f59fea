using ScreenStats.Statistics.Numerics;
using ScreenStats.Statistics.Trends.Series;

namespace ScreenStats.Statistics.Trends.Growth;

/// <summary>When a rate reaches a level, by the line fitted to it (the same as a dose at which half respond).</summary>
public static class LevelCrossing
{
    /// <summary>The time at which a line reaches a level on its own scale.</summary>
    /// <param name="line">The line.</param>
    /// <param name="level">The level on the line's scale (log odds, log rate), finite.</param>
    /// <param name="confidence">The confidence of the limits, in (0, 1).</param>
    /// <returns>The time by both methods; undefined where the slope is nil.</returns>
    /// <exception cref="ArgumentNullException">No line.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its domain.</exception>
    /// <remarks>
    /// x = (level - a) / b. Standard error √(V_a + 2x C + x² V_b) / |b|. Fieller's limits are the times at which (a + b x - level)² is not more than z² times its variance: where
    /// the slope itself is within z errors of 0 they are no interval, and both ends are open. A line is a guess beyond the periods it was fitted to.
    /// Source: Fieller EC, J R Stat Soc B 1954;16:175-185; Finney DJ, Probit Analysis, 1971, chapter 4 (from memory).
    /// </remarks>
    public static CrossingEstimate Of(FittedLine line, double level, double confidence = 0.95)
    {
        ArgumentNullException.ThrowIfNull(line);
        Guard.Finite(level);
        Guard.Confidence(confidence);
        const string byError = "line fitted, standard error of the ratio", byFieller = "line fitted, Fieller's limits";
        if (line.Slope == 0 || !double.IsFinite((level - line.Intercept) / line.Slope))
            return new CrossingEstimate(level, OpenEstimate.Undefined(UndefinedReason.SlopeNil, byError, confidence), null, OpenEstimate.Undefined(UndefinedReason.SlopeNil, byFieller, confidence), confidence);
        var z = Quantile.Normal(confidence);
        var x = (level - line.Intercept) / line.Slope;
        var time = line.Origin + x;
        var error = Math.Sqrt(line.VarianceAt(time)) / Math.Abs(line.Slope);
        var delta = new OpenEstimate(time, time - (z * error), time + (z * error), byError, confidence, null, null, null).Finite();

        // A x² - 2 B x + C <= 0 in the time from the value itself, so that no digits are lost: a + b x - level is b times that time.
        var moved = line.From(time);
        var a = (line.Slope * line.Slope) - (z * z * moved.SlopeVariance);
        if (!(a > 0))
        {
            return new CrossingEstimate(
                level, delta, error, new OpenEstimate(time, null, null, byFieller, confidence, null, UndefinedReason.SlopeMayBeNil, UndefinedReason.SlopeMayBeNil), confidence);
        }

        var b = z * z * moved.Covariance;
        var root = Math.Sqrt(Math.Max(0, (b * b) + (a * z * z * moved.InterceptVariance)));
        return new CrossingEstimate(level, delta, error, new OpenEstimate(time, time + ((b - root) / a), time + ((b + root) / a), byFieller, confidence, null, null, null).Finite(), confidence);
    }

    /// <summary>The time at which the fitted rate of a series reaches a rate.</summary>
    /// <param name="growth">The growth of the series.</param>
    /// <param name="rate">The rate: a share strictly between 0 and 1, or on the scale of events any rate above 0.</param>
    /// <returns>The time by both methods; undefined where the growth is, or is nil.</returns>
    /// <exception cref="ArgumentNullException">No growth.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A rate outside its domain.</exception>
    public static CrossingEstimate Of(GrowthEstimate growth, double rate)
    {
        ArgumentNullException.ThrowIfNull(growth);
        if (!(rate > 0) || !double.IsFinite(rate) || (growth.Scale != TrendScale.Events && !(rate < 1)))
            throw new ArgumentOutOfRangeException(nameof(rate), rate, "The rate must lie above 0, and a share of trials below 1.");
        var level = growth.Scale == TrendScale.Odds ? LogitScale.Logit(rate) : Math.Log(rate);
        if (growth.Line is { } line && growth.StandardError is not null) return Of(line, level, growth.Confidence);
        var reason = growth.Reason ?? UndefinedReason.NoDegreesOfFreedom;
        var undefined = OpenEstimate.Undefined(reason, growth.Method, growth.Confidence);
        return new CrossingEstimate(level, undefined, null, undefined, growth.Confidence);
    }
}
