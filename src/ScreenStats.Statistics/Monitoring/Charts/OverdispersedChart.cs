using ScreenStats.Statistics.Monitoring.Runs;

namespace ScreenStats.Statistics.Monitoring.Charts;

/// <summary>Laney's p' chart: three-sigma limits widened by how much the points vary from one to the next beyond chance.</summary>
public static class OverdispersedChart
{
    /// <summary>The divisor d₂ of the mean moving range of two as handbooks print it.</summary>
    public const double PrintedDivisor = 1.128;

    /// <summary>The same without rounding, 2 / √π.</summary>
    public const double ExactDivisor = 1.1283791670955126;

    /// <summary>Makes the chart.</summary>
    /// <param name="subgroups">Events and trials of each point, in order.</param>
    /// <param name="centre">The proportion to stand around, in [0, 1]; null takes it from the points.</param>
    /// <param name="divisor">d₂, above 0: <see cref="PrintedDivisor"/> as published, or <see cref="ExactDivisor"/>.</param>
    /// <param name="rules">The rules to look for; null looks for points outside the limits.</param>
    /// <returns>The chart; <see cref="ControlChart.Widening"/> is σz.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The centre, the divisor or a rule is outside its domain.</exception>
    /// <remarks>
    /// z = (p_i - p) / √(p (1 - p) / n_i); σz = mean |z_i - z_(i-1)| / d₂ over points with trials; limits p ± 3 σz √(p (1 - p) / n_i), cut at 0 and 1.
    /// σz is not raised to 1 where it comes out below. Undefined with fewer than two points, and where all z are alike. The large samples that
    /// call for this chart make its normal limits good; with few expected events use the exact chart.
    /// Source: Laney DB, Qual Eng 2002;14:531-537.
    /// </remarks>
    public static ControlChart Of(IEnumerable<Subgroup> subgroups, double? centre = null, double divisor = PrintedDivisor, IEnumerable<RunRule>? rules = null)
    {
        const string Method = "p' chart, limits widened by the variation between points";
        Subgroup[] points = [.. subgroups];
        var (widening, reason) = Widening(points, centre, divisor);
        var looked = ChartBuilder.Rules(rules);
        if (reason is { } why)
        {
            var plain = points.Select((point, index) => ChartBuilder.Plain(index, point, why));
            return ChartBuilder.Undefined(Method, ChartLimits.Widened, plain, looked, ChartBuilder.Centre(points, centre).Centre, centre is not null, why) with { Widening = widening };
        }

        var chart = ChartBuilder.Proportions(Method, ChartLimits.Widened, points, centre, looked, (point, p) => ProportionChart.Widened(point, p, widening!.Value));
        return chart with { Widening = widening };
    }

    /// <summary>σz, or why there is none.</summary>
    internal static (double? Widening, UndefinedReason? Reason) Widening(IReadOnlyList<Subgroup> subgroups, double? given, double divisor)
    {
        if (!(divisor > 0) || !double.IsFinite(divisor)) throw new ArgumentOutOfRangeException(nameof(divisor), divisor, "The divisor must be a finite number above 0, for instance 1.128.");
        var (centre, reason) = ChartBuilder.Centre(subgroups, given);
        if (reason is not null) return (null, reason);
        var p = centre!.Value;
        var scores = subgroups.Where(s => s.Trials > 0).Select(s => (((double)s.Events / s.Trials) - p) / Math.Sqrt(p * (1 - p) / s.Trials)).ToList();
        if (scores.Count < 2) return (null, scores.Count == 0 ? UndefinedReason.NoTrials : UndefinedReason.FewerThanTwoPoints);
        double sum = 0;
        for (var i = 1; i < scores.Count; i++) sum += Math.Abs(scores[i] - scores[i - 1]);
        return sum == 0 ? (0, UndefinedReason.PointsAllAlike) : (sum / (scores.Count - 1) / divisor, null);
    }
}
