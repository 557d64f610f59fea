using ScreenStats.Statistics.Monitoring.Runs;

namespace ScreenStats.Statistics.Monitoring.Charts;

/// <summary>Control charts of a proportion over points of unequal size (p chart; with the counts beside it, np chart).</summary>
/// <remarks>
/// The centre is Σ events / Σ trials unless it is given. Limits taken from the very points they judge are for looking back; to watch new points
/// give the centre of a good period. A point without trials has no value and is passed over by all rules. Undefined, with points but no limits:
/// no trials, a single point without a given centre, no event or only events, a given centre of 0 or 1.
/// </remarks>
public static class ProportionChart
{
    /// <summary>Limits from the binomial distribution itself: the default.</summary>
    /// <param name="subgroups">Events and trials of each point, in order.</param>
    /// <param name="centre">The proportion to stand around, in [0, 1]; null takes it from the points.</param>
    /// <param name="tailProbability">The greatest chance of a point outside on either side, in (0, 0.5); 0.00135 is that of three normal standard errors.</param>
    /// <param name="rules">The rules to look for; null looks for points outside the limits.</param>
    /// <returns>The chart.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The centre, the chance or a rule is outside its domain.</exception>
    /// <remarks>
    /// The smallest count inside is the first with P(X ≤ x) ≥ α, the largest the first with P(X > x) ≤ α, so that on each side a point lies outside
    /// with chance α at most, at any size and rate. The other rules use the normal score of the exact tail: each side, and each distance, has at most
    /// the chance it has for a normal variable, so that a row of days without an event is no run.
    /// Source: Ryan TP, Statistical Methods for Quality Improvement, chapter on attributes charts (from memory).
    /// </remarks>
    public static ControlChart Exact(IEnumerable<Subgroup> subgroups, double? centre = null, double tailProbability = ChartBuilder.UsualTail, IEnumerable<RunRule>? rules = null)
    {
        ChartBuilder.Tail(tailProbability);
        var chart = ChartBuilder.Proportions("p chart, exact binomial limits", ChartLimits.Probability, [.. subgroups], centre, rules, (point, p) =>
        {
            var (x, n) = (point.Events!.Value, point.Trials!.Value);
            var (fewest, most) = CountLimits.BinomialInside(n, p, tailProbability);
            var standing = Standing.FromTails(CountLimits.BinomialOrMore(x, n, p), CountLimits.BinomialOrLess(x, n, p));
            return point with
            {
                Centre = p, Lower = (double)fewest / n, Upper = (double)most / n, FewestInside = fewest, MostInside = most, Score = standing.Score, Side = standing.Side,
            };
        });
        return chart with { TailProbability = tailProbability };
    }

    /// <summary>Limits three standard errors either side of the centre.</summary>
    /// <param name="subgroups">Events and trials of each point, in order.</param>
    /// <param name="centre">The proportion to stand around, in [0, 1]; null takes it from the points.</param>
    /// <param name="rules">The rules to look for; null looks for points outside the limits.</param>
    /// <returns>The chart.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The centre or a rule is outside its domain.</exception>
    /// <remarks>
    /// p ± 3 √(p (1 - p) / n), cut at 0 and 1. Where few events are expected at a point the upper limit is crossed far more often than the normal
    /// distribution says, and the lower one never. Source: NIST/SEMATECH e-Handbook of Statistical Methods, 6.3.3.2.
    /// </remarks>
    public static ControlChart ThreeSigma(IEnumerable<Subgroup> subgroups, double? centre = null, IEnumerable<RunRule>? rules = null) =>
        ChartBuilder.Proportions("p chart, three-sigma limits", ChartLimits.ThreeSigma, [.. subgroups], centre, rules, (point, p) => Widened(point, p, 1));

    /// <summary>Ryan and Schwertman's regression limits: close to the exact ones, without a table.</summary>
    /// <param name="subgroups">Events and trials of each point, in order.</param>
    /// <param name="centre">The proportion to stand around, in [0, 1]; null takes it from the points.</param>
    /// <param name="rules">The rules to look for; null looks for points outside the limits.</param>
    /// <returns>The chart.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The centre or a rule is outside its domain.</exception>
    /// <remarks>
    /// On the scale of counts 0.6195 + 1.00523 np + 2.983 √(np) and 2.9529 + 1.01956 np - 3.2729 √(np), for small p; cut at 0 and n.
    /// Source: Ryan TP, Schwertman NC, J Qual Technol 1997;29:86-98 (from memory).
    /// </remarks>
    public static ControlChart Regression(IEnumerable<Subgroup> subgroups, double? centre = null, IEnumerable<RunRule>? rules = null) =>
        ChartBuilder.Proportions("p chart, regression limits", ChartLimits.Regression, [.. subgroups], centre, rules, (point, p) =>
        {
            double n = point.Trials!.Value;
            var expected = n * p;
            var upper = 0.6195 + (1.00523 * expected) + (2.983 * Math.Sqrt(expected));
            var lower = 2.9529 + (1.01956 * expected) - (3.2729 * Math.Sqrt(expected));
            // For a few expected counts the lower parabola turns up again; there it lies above the centre and means no limit.
            if (lower > expected || expected < 1) lower = 0;
            return Widened(point, p, 1) with { Lower = Math.Max(0, lower / n), Upper = Math.Min(1, upper / n) };
        });

    /// <summary>The exact chart, or the overdispersed one where the variation between points demands it.</summary>
    /// <param name="subgroups">Events and trials of each point, in order.</param>
    /// <param name="centre">The proportion to stand around, in [0, 1]; null takes it from the points.</param>
    /// <param name="tailProbability">For the exact chart: the greatest chance of a point outside on either side, in (0, 0.5).</param>
    /// <param name="rules">The rules to look for; null looks for points outside the limits.</param>
    /// <returns>The chart, with <see cref="ControlChart.Overdispersion"/> saying why it is the one.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The centre, the chance or a rule is outside its domain.</exception>
    /// <remarks>The rule and its reason stand at <see cref="Overdispersion.Check"/>.</remarks>
    public static ControlChart Suited(IEnumerable<Subgroup> subgroups, double? centre = null, double tailProbability = ChartBuilder.UsualTail, IEnumerable<RunRule>? rules = null)
    {
        Subgroup[] points = [.. subgroups];
        var check = Overdispersion.Check(points, centre);
        var chart = check.Demanded ? OverdispersedChart.Of(points, centre, rules: rules) : Exact(points, centre, tailProbability, rules);
        return chart with { Overdispersion = check };
    }

    /// <summary>The point with three standard errors times a factor either side.</summary>
    internal static ChartPoint Widened(ChartPoint point, double p, double factor)
    {
        var error = Math.Sqrt(p * (1 - p) / point.Trials!.Value) * factor;
        var standing = Standing.FromDistance((point.Value!.Value - p) / error);
        return point with { Centre = p, Lower = Math.Max(0, p - (3 * error)), Upper = Math.Min(1, p + (3 * error)), Score = standing.Score, Side = standing.Side };
    }
}
