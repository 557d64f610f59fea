using ScreenStats.Statistics.Monitoring.Charts;
using ScreenStats.Statistics.Monitoring.Runs;
using ScreenStats.Statistics.Numerics;

namespace ScreenStats.Statistics.Monitoring.RareEvents;

/// <summary>Control charts of the number of trials without an event between one event and the next (g chart).</summary>
/// <remarks>
/// For events so rare that a chart of proportions shows only zeros. Small gaps are the bad ones. Undefined, with points but no limits: no gaps,
/// a single one without a given mean, a mean of 0 (every trial an event).
/// </remarks>
public static class GapChart
{
    /// <summary>Limits from the geometric distribution itself: the default.</summary>
    /// <param name="gaps">The number of trials without an event between events, 0 or more, in order.</param>
    /// <param name="rate">The chance of an event in a trial, in (0, 1); null takes 1 / (1 + mean gap).</param>
    /// <param name="tailProbability">The chance on either side, in (0, 0.5).</param>
    /// <param name="rules">The rules to look for; null looks for points outside the limits.</param>
    /// <returns>The chart; its centre is the mean gap, that of the points the median.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A gap, the rate, the chance or a rule is outside its domain.</exception>
    /// <remarks>
    /// Quantiles of P(X ≤ x) = 1 - (1 - p)^(x + 1). Where p is at least the tail the lower limit is 0 and a single short gap cannot signal; runs of
    /// short gaps do (two-of-three-far, four-of-five-off, eight-on-one-side), by the exact tails. Source: Benneyan JC, Health Care Manag Sci 2001;4:305-318.
    /// </remarks>
    public static ControlChart Probability(IEnumerable<long> gaps, double? rate = null, double tailProbability = ChartBuilder.UsualTail, IEnumerable<RunRule>? rules = null)
    {
        ChartBuilder.Tail(tailProbability);
        var chart = Make("g chart, geometric probability limits", ChartLimits.Probability, gaps, rate, rules, (point, mean, p) =>
        {
            var x = point.Events!.Value;
            var (fewest, most) = (Quantile(p, tailProbability, upper: false), Quantile(p, tailProbability, upper: true));
            var standing = Standing.FromTails(OrMore(p, x), OrLess(p, x));
            return point with
            {
                Centre = Quantile(p, 0.5, upper: false), Lower = fewest, Upper = most, FewestInside = fewest, MostInside = most, Score = standing.Score, Side = standing.Side,
            };
        });
        return chart with { TailProbability = tailProbability };
    }

    /// <summary>Limits three standard deviations either side of the mean gap.</summary>
    /// <param name="gaps">The number of trials without an event between events, 0 or more, in order.</param>
    /// <param name="rate">The chance of an event in a trial, in (0, 1); null takes 1 / (1 + mean gap).</param>
    /// <param name="rules">The rules to look for; null looks for points outside the limits.</param>
    /// <returns>The chart.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A gap, the rate or a rule is outside its domain.</exception>
    /// <remarks>g ± 3 √(g (g + 1)), cut at 0: for comparison. The upper limit is crossed with chance 0.018, the lower never.</remarks>
    public static ControlChart ThreeSigma(IEnumerable<long> gaps, double? rate = null, IEnumerable<RunRule>? rules = null) =>
        Make("g chart, three-sigma limits", ChartLimits.ThreeSigma, gaps, rate, rules, (point, mean, _) =>
        {
            var error = Math.Sqrt(mean * (mean + 1));
            var standing = Standing.FromDistance((point.Value!.Value - mean) / error);
            return point with { Centre = mean, Lower = Math.Max(0, mean - (3 * error)), Upper = mean + (3 * error), Score = standing.Score, Side = standing.Side };
        });

    /// <summary>The first gap with a lower tail of at least the chance, or with an upper tail beyond it of at most the chance.</summary>
    internal static long Quantile(double p, double tail, bool upper)
    {
        var end = (long)Math.Ceiling(Math.Log(tail) / Precise.LogOnePlus(-p)) + 2;
        return upper ? CountLimits.First(0, end, x => OrMore(p, x + 1) <= tail) : CountLimits.First(0, long.MaxValue / 4, x => OrLess(p, x) >= tail);
    }

    private static double OrMore(double p, long x) => Math.Exp(x * Precise.LogOnePlus(-p));

    private static double OrLess(double p, long x) => -Precise.ExponentialMinusOne((x + 1.0) * Precise.LogOnePlus(-p));

    private static ControlChart Make(string method, ChartLimits limits, IEnumerable<long> gaps, double? rate, IEnumerable<RunRule>? rules, Func<ChartPoint, double, double, ChartPoint> judge)
    {
        var looked = ChartBuilder.Rules(rules);
        long[] values = [.. gaps];
        foreach (var gap in values) Guard.NotNegative(gap);
        if (rate is { } given && !(given >= 1e-15 && given < 1)) throw new ArgumentOutOfRangeException(nameof(rate), rate, "The chance of an event must lie between 1e-15 and 1, which is excluded.");
        double? mean = rate is { } p ? (1 - p) / p : values.Length == 0 ? null : values.Sum(value => (double)value) / values.Length;
        UndefinedReason? reason = mean is null || values.Length == 0 ? UndefinedReason.NoEvents
            : rate is null && values.Length == 1 ? UndefinedReason.FewerThanTwoPoints
            : mean == 0 ? UndefinedReason.OnlyEvents
            : null;
        var plain = values.Select((value, index) => new ChartPoint(index) { Events = value, Observed = value, Value = value, Reason = reason });
        if (reason is { } why) return ChartBuilder.Undefined(method, limits, plain, looked, mean, rate is not null, why);
        var chance = rate ?? 1 / (1 + mean!.Value);
        return new ControlChart(method, limits, RuleEvaluation.Judge([.. plain.Select(point => judge(point, mean!.Value, chance))], looked), looked)
        {
            Centre = mean,
            CentreGiven = rate is not null,
        };
    }
}
