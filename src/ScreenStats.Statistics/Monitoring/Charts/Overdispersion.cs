using MathNet.Numerics;

namespace ScreenStats.Statistics.Monitoring.Charts;

/// <summary>Decides whether limits from the binomial distribution are too narrow for the points of a chart.</summary>
public static class Overdispersion
{
    /// <summary>The p-value below which the points are held to vary by more than chance.</summary>
    public const double Level = 0.01;

    /// <summary>Looks at the variation between points.</summary>
    /// <param name="subgroups">Events and trials of each point, in order.</param>
    /// <param name="centre">The proportion the chart stands around, in [0, 1]; null takes it from the points.</param>
    /// <returns>What was found; where nothing can be told the widened chart is not demanded.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The centre is outside [0, 1].</exception>
    /// <remarks>
    /// <para>
    /// The overdispersed chart is demanded where (1) Pearson's statistic over all points has p below 0.01, (2) σz is above 1, and (3) the same
    /// holds without the points outside the exact limits, or more than a quarter of all points are outside. Why: with large samples the smallest real
    /// difference between days puts every point outside and the chart says nothing (1); a level that drifts slowly is a signal, not noise, and leaves
    /// σz near 1 (2); and a few bad points - one bad lot - must not widen the limits that ought to show them (3).
    /// </para>
    /// <para>
    /// The p-value is conditional on the number of events: a gamma distribution with the exact mean and variance of the statistic over all ways to
    /// spread the events over the trials, so that it also holds where few events are expected at a point. With many it is chi-square with
    /// points - 1 degrees of freedom. Source of the moments: Dawson RB, Biometrika 1954;41:280 (formula from memory, checked against enumeration).
    /// </para>
    /// </remarks>
    public static OverdispersionCheck Check(IEnumerable<Subgroup> subgroups, double? centre = null)
    {
        Subgroup[] points = [.. subgroups.Where(subgroup => subgroup.Trials > 0)];
        var (widening, reason) = OverdispersedChart.Widening(points, centre, OverdispersedChart.PrintedDivisor);
        if (reason is not null) return new OverdispersionCheck { Widening = widening, Reason = reason };
        var all = Dispersion(points);
        var outside = new HashSet<int>(ProportionChart.Exact(points, centre).Signals.Select(signal => signal.Index));
        var inside = Dispersion([.. points.Where((_, index) => !outside.Contains(index))]);
        return new OverdispersionCheck
        {
            Statistic = all.Statistic,
            DegreesOfFreedom = points.Length - 1,
            PValue = all.PValue,
            Widening = widening,
            PointsOutside = outside.Count,
            PValueInside = inside.PValue,
            Demanded = all.PValue < Level && widening > 1 && (inside.PValue < Level || outside.Count * 4 > points.Length),
            Reason = all.Reason,
        };
    }

    /// <summary>Pearson's statistic of a table of events and other trials by points, with its p-value given both margins.</summary>
    internal static (double? Statistic, double? PValue, UndefinedReason? Reason) Dispersion(IReadOnlyList<Subgroup> points)
    {
        double trials = 0, events = 0, inverse = 0;
        foreach (var point in points)
        {
            trials += point.Trials;
            events += point.Events;
            inverse += 1.0 / point.Trials;
        }

        if (points.Count < 2) return (null, null, UndefinedReason.FewerThanTwoPoints);
        if (events == 0) return (null, null, UndefinedReason.NoEvents);
        if (events == trials) return (null, null, UndefinedReason.OnlyEvents);
        var p = events / trials;
        double statistic = 0;
        foreach (var point in points)
        {
            var distance = point.Events - (point.Trials * p);
            statistic += distance * distance / (point.Trials * p * (1 - p));
        }

        if (trials == points.Count) return (statistic, null, UndefinedReason.OneTrialInEachCluster);
        if (trials <= 3) return (statistic, null, UndefinedReason.FewerThanTwoPoints);
        double m = points.Count;
        var mean = (m - 1) * trials / (trials - 1);
        var v = (m - 1) * (trials - m) / (trials - 1);
        var w = ((trials * inverse) - (m * m)) / (trials - 2);
        var vTwo = (trials - 2) / (trials - 1);
        var wTwo = ((trials * ((1 / events) + (1 / (trials - events)))) - 4) / (trials - 2);
        var variance = (2 * trials / (trials - 3) * (v - w) * (vTwo - wTwo)) + (trials * trials / (trials - 1) * w * wTwo);
        // With one event, or one trial in each point, nothing is left to vary.
        if (!(variance > 1e-12 * mean * mean)) return (statistic, null, UndefinedReason.PointsAllAlike);
        var scale = variance / mean;
        return (statistic, Math.Clamp(SpecialFunctions.GammaUpperRegularized(mean / scale, statistic / scale), 0, 1), null);
    }
}
