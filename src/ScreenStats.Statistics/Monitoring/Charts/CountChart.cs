using ScreenStats.Statistics.Monitoring.Runs;

namespace ScreenStats.Statistics.Monitoring.Charts;

/// <summary>Control charts of a count per point where the opportunity is the same at each (c chart).</summary>
/// <remarks>Undefined, with points but no limits: no points, a single one without a given mean, a mean of 0.</remarks>
public static class CountChart
{
    /// <summary>Limits from the Poisson distribution itself: the default.</summary>
    /// <param name="counts">The count of each point, 0 or more, in order.</param>
    /// <param name="mean">The mean to stand around, 0 or more; null takes it from the points.</param>
    /// <param name="tailProbability">The greatest chance of a point outside on either side, in (0, 0.5).</param>
    /// <param name="rules">The rules to look for; null looks for points outside the limits.</param>
    /// <returns>The chart.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A count, the mean, the chance or a rule is outside its domain.</exception>
    /// <remarks>The smallest count inside is the first with P(X ≤ x) ≥ α, the largest the first with P(X > x) ≤ α.</remarks>
    public static ControlChart Exact(IEnumerable<long> counts, double? mean = null, double tailProbability = ChartBuilder.UsualTail, IEnumerable<RunRule>? rules = null)
    {
        ChartBuilder.Tail(tailProbability);
        var chart = Make("c chart, exact Poisson limits", ChartLimits.Probability, counts, mean, rules, (point, c) =>
        {
            var x = point.Events!.Value;
            var (fewest, most) = CountLimits.PoissonInside(c, tailProbability);
            var standing = Standing.FromTails(CountLimits.PoissonOrMore(x, c), CountLimits.PoissonOrLess(x, c));
            return point with { Centre = c, Lower = fewest, Upper = most, FewestInside = fewest, MostInside = most, Score = standing.Score, Side = standing.Side };
        });
        return chart with { TailProbability = tailProbability };
    }

    /// <summary>Limits three standard errors either side of the mean.</summary>
    /// <param name="counts">The count of each point, 0 or more, in order.</param>
    /// <param name="mean">The mean to stand around, 0 or more; null takes it from the points.</param>
    /// <param name="rules">The rules to look for; null looks for points outside the limits.</param>
    /// <returns>The chart.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A count, the mean or a rule is outside its domain.</exception>
    /// <remarks>c ± 3 √c, cut at 0. Source: NIST/SEMATECH e-Handbook of Statistical Methods, 6.3.3.1.</remarks>
    public static ControlChart ThreeSigma(IEnumerable<long> counts, double? mean = null, IEnumerable<RunRule>? rules = null) =>
        Make("c chart, three-sigma limits", ChartLimits.ThreeSigma, counts, mean, rules, (point, c) =>
        {
            var error = Math.Sqrt(c);
            var standing = Standing.FromDistance((point.Value!.Value - c) / error);
            return point with { Centre = c, Lower = Math.Max(0, c - (3 * error)), Upper = c + (3 * error), Score = standing.Score, Side = standing.Side };
        });

    private static ControlChart Make(string method, ChartLimits limits, IEnumerable<long> counts, double? mean, IEnumerable<RunRule>? rules, Func<ChartPoint, double, ChartPoint> judge)
    {
        var looked = ChartBuilder.Rules(rules);
        long[] values = [.. counts];
        foreach (var count in values) Guard.NotNegative(count);
        if (mean is { } given && (!(given >= 0) || given > 1e12)) throw new ArgumentOutOfRangeException(nameof(mean), mean, "The mean must lie between 0 and 1e12.");
        double? centre = mean ?? (values.Length == 0 ? null : values.Sum(value => (double)value) / values.Length);
        UndefinedReason? reason = centre is null ? UndefinedReason.NoPoints
            : mean is null && values.Length == 1 ? UndefinedReason.FewerThanTwoPoints
            : centre == 0 ? mean is null ? UndefinedReason.NoEvents : UndefinedReason.CentreAtTheEdge
            : null;
        var plain = values.Select((value, index) => new ChartPoint(index) { Events = value, Observed = value, Value = value, Reason = reason });
        if (reason is { } why) return ChartBuilder.Undefined(method, limits, plain, looked, centre, mean is not null, why);
        return new ControlChart(method, limits, RuleEvaluation.Judge([.. plain.Select(point => judge(point, centre!.Value))], looked), looked)
        {
            Centre = centre,
            CentreGiven = mean is not null,
        };
    }
}
