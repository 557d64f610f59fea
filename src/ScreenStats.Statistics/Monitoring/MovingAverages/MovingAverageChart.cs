using ScreenStats.Statistics.Monitoring.Charts;
using ScreenStats.Statistics.Monitoring.Runs;

namespace ScreenStats.Statistics.Monitoring.MovingAverages;

/// <summary>Exponentially weighted moving averages: they see small lasting shifts sooner than single points do.</summary>
/// <remarks>
/// z_i = λ y_i + (1 - λ) z_(i-1) from z_0 = centre. Only <see cref="RunRule.OutsideLimits"/> is looked for: neighbouring averages share
/// their past, so that runs of them are no sign. Source: Lucas JM, Saccucci MS, Technometrics 1990;32:1-12.
/// </remarks>
public static class MovingAverageChart
{
    /// <summary>The moving average of proportions over points of unequal size, with exact limits from the first point on.</summary>
    /// <param name="subgroups">Events and trials of each point, in order. A point without trials leaves the average where it is.</param>
    /// <param name="centre">The proportion to start from and stand around, in [0, 1]; null takes it from the points.</param>
    /// <param name="weight">λ, the weight of the newest point, in (0, 1].</param>
    /// <param name="width">The distance of the limits in standard errors, above 0: 2.962 for λ = 0.2 gives one false alarm in 500 points.</param>
    /// <returns>The chart.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The centre, the weight or the width is outside its domain.</exception>
    /// <remarks>
    /// V_i = (1 - λ)² V_(i-1) + λ² p (1 - p) / n_i, limits p ± L √V_i, cut at 0 and 1. Normal limits for a weighted mean of binomials: with few expected events
    /// in the last 2/λ points together the upper limit is crossed more often than stated. Undefined as <see cref="ProportionChart"/> is.
    /// </remarks>
    public static ControlChart Proportions(IEnumerable<Subgroup> subgroups, double? centre = null, double weight = 0.2, double width = 2.962)
    {
        Check(weight, width);
        var (average, variance) = (double.NaN, 0.0);
        return ChartBuilder.Proportions("exponentially weighted moving average of proportions", ChartLimits.MovingAverage, [.. subgroups], centre, null, (point, p) =>
        {
            if (double.IsNaN(average)) average = p;
            average = (weight * point.Observed!.Value) + ((1 - weight) * average);
            variance = ((1 - weight) * (1 - weight) * variance) + (weight * weight * p * (1 - p) / point.Trials!.Value);
            var error = Math.Sqrt(variance);
            return Smoothed(point, average, p, error, width) with { Lower = Math.Max(0, p - (width * error)), Upper = Math.Min(1, p + (width * error)) };
        });
    }

    /// <summary>The moving average of measured values with a known standard deviation.</summary>
    /// <param name="values">The values in order, finite.</param>
    /// <param name="target">The mean to start from and stand around, finite.</param>
    /// <param name="standardDeviation">The standard deviation of one value, above 0.</param>
    /// <param name="weight">λ, the weight of the newest value, in (0, 1].</param>
    /// <param name="width">The distance of the limits in standard errors, above 0.</param>
    /// <param name="steady">Whether the limits are those reached in the long run, from the first value on; false gives the narrower ones exact for each value.</param>
    /// <returns>The chart; undefined without values.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A figure is outside its domain.</exception>
    /// <remarks>Steady limits: target ± L s √(λ / (2 - λ)), as in NIST/SEMATECH e-Handbook of Statistical Methods, 6.3.2.4.</remarks>
    public static ControlChart Values(IEnumerable<double> values, double target, double standardDeviation, double weight = 0.2, double width = 2.962, bool steady = false)
    {
        const string Method = "exponentially weighted moving average";
        Check(weight, width);
        Guard.Finite(target);
        if (!(standardDeviation > 0) || !double.IsFinite(standardDeviation))
            throw new ArgumentOutOfRangeException(nameof(standardDeviation), standardDeviation, "The standard deviation must be a finite number above 0.");
        var (average, share) = (target, steady ? weight / (2 - weight) : 0);
        var points = new List<ChartPoint>();
        foreach (var value in values)
        {
            Guard.Finite(value, nameof(values));
            average = (weight * value) + ((1 - weight) * average);
            if (!steady) share = ((1 - weight) * (1 - weight) * share) + (weight * weight);
            points.Add(Smoothed(new ChartPoint(points.Count) { Observed = value }, average, target, standardDeviation * Math.Sqrt(share), width));
        }

        return points.Count == 0
            ? ChartBuilder.Undefined(Method, ChartLimits.MovingAverage, points, [RunRule.OutsideLimits], target, true, UndefinedReason.NoPoints)
            : new ControlChart(Method, ChartLimits.MovingAverage, RuleEvaluation.Judge(points, [RunRule.OutsideLimits]), [RunRule.OutsideLimits]) { Centre = target, CentreGiven = true };
    }

    internal static void Check(double weight, double width)
    {
        if (!(weight > 0 && weight <= 1)) throw new ArgumentOutOfRangeException(nameof(weight), weight, "The weight of the newest point lies above 0 and is at most 1, for instance 0.2.");
        if (!(width > 0) || !double.IsFinite(width)) throw new ArgumentOutOfRangeException(nameof(width), width, "The width must be a finite number above 0, for instance 2.962.");
    }

    private static ChartPoint Smoothed(ChartPoint point, double average, double centre, double error, double width)
    {
        var standing = Standing.FromDistance((average - centre) / error);
        return point with { Value = average, Centre = centre, Lower = centre - (width * error), Upper = centre + (width * error), Score = standing.Score, Side = standing.Side };
    }
}
