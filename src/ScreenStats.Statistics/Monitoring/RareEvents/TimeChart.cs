using ScreenStats.Statistics.Monitoring.Charts;
using ScreenStats.Statistics.Monitoring.Runs;
using ScreenStats.Statistics.Numerics;

namespace ScreenStats.Statistics.Monitoring.RareEvents;

/// <summary>Control charts of the time between one rare event and the next (t chart).</summary>
/// <remarks>Short times are the bad ones. Undefined, with points but no limits: no times, a single one without a given mean, all times 0.</remarks>
public static class TimeChart
{
    /// <summary>The power that makes exponential times nearly normal, as handbooks print it (1 / 3.6).</summary>
    public const double PrintedPower = 0.2777;

    /// <summary>Limits from the exponential distribution itself: the default.</summary>
    /// <param name="times">The times between events, 0 or more and finite, in any unit.</param>
    /// <param name="mean">The mean time, above 0; null takes it from the points.</param>
    /// <param name="tailProbability">The chance of a point outside on either side, in (0, 0.5).</param>
    /// <param name="rules">The rules to look for; null looks for points outside the limits.</param>
    /// <returns>The chart; its centre is the mean time, that of the points the median.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A time, the mean, the chance or a rule is outside its domain.</exception>
    /// <remarks>Lower limit -m ln(1 - α), median m ln 2, upper limit -m ln α: exact while events come at a constant rate and the mean is known.</remarks>
    public static ControlChart Probability(IEnumerable<double> times, double? mean = null, double tailProbability = ChartBuilder.UsualTail, IEnumerable<RunRule>? rules = null)
    {
        ChartBuilder.Tail(tailProbability);
        var (points, centre, reason) = Read(times, mean);
        var chart = Make("t chart, exponential probability limits", ChartLimits.Probability, points, centre, mean is not null, reason, rules, point =>
        {
            var t = point.Value!.Value / centre!.Value;
            var standing = Standing.FromTails(Math.Exp(-t), -Precise.ExponentialMinusOne(-t));
            return point with
            {
                Centre = centre * Math.Log(2), Lower = -centre * Precise.LogOnePlus(-tailProbability), Upper = -centre * Math.Log(tailProbability), Score = standing.Score, Side = standing.Side,
            };
        });
        return chart with { TailProbability = tailProbability };
    }

    /// <summary>Three-sigma limits on a power of the times, from their mean moving range, brought back to the scale of times.</summary>
    /// <param name="times">The times between events, 0 or more and finite, in any unit.</param>
    /// <param name="power">The power, in (0, 1]: <see cref="PrintedPower"/> as in handbooks.</param>
    /// <param name="divisor">d₂ of the moving range, above 0: 1.128, <see cref="OverdispersedChart.ExactDivisor"/>, or 3 / 2.66.</param>
    /// <param name="rules">The rules to look for; null looks for points outside the limits.</param>
    /// <returns>The chart; its centre is the mean power brought back. The lower limit is 0 where the transformed one is not above 0. Undefined also where all times are alike.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A time, the power, the divisor or a rule is outside its domain.</exception>
    /// <remarks>
    /// x = t^c; limits (mean x ± 3 mean |Δx| / d₂)^(1/c). Source: Nelson LS, J Qual Technol 1994;26:239-240; Montgomery DC, Introduction to Statistical Quality
    /// Control, section 7.3 (both from memory).
    /// </remarks>
    public static ControlChart PowerTransform(IEnumerable<double> times, double power = PrintedPower, double divisor = OverdispersedChart.PrintedDivisor, IEnumerable<RunRule>? rules = null)
    {
        if (!(power > 0 && power <= 1)) throw new ArgumentOutOfRangeException(nameof(power), power, "The power lies above 0 and is at most 1, for instance 0.2777.");
        if (!(divisor > 0) || !double.IsFinite(divisor)) throw new ArgumentOutOfRangeException(nameof(divisor), divisor, "The divisor must be a finite number above 0, for instance 1.128.");
        var (points, _, reason) = Read(times, null);
        var transformed = points.Select(time => Math.Pow(time, power)).ToList();
        double middle = 0, error = 0;
        if (reason is null)
        {
            middle = transformed.Average();
            error = transformed.Skip(1).Zip(transformed, (next, before) => Math.Abs(next - before)).Average() / divisor;
            if (error == 0) reason = UndefinedReason.PointsAllAlike;
        }

        return Make("t chart, three-sigma limits on a power of the times", ChartLimits.Transformed, points, reason is null ? Back(middle) : null, false, reason, rules, point =>
        {
            var standing = Standing.FromDistance((transformed[point.Index] - middle) / error);
            return point with
            {
                Centre = Back(middle), Lower = Back(Math.Max(0, middle - (3 * error))), Upper = Back(middle + (3 * error)), Score = standing.Score, Side = standing.Side,
            };
        });

        double Back(double value) => Math.Pow(value, 1 / power);
    }

    private static (List<double> Times, double? Mean, UndefinedReason? Reason) Read(IEnumerable<double> times, double? mean)
    {
        if (mean is { } given && (!(given > 0) || given > 1e100)) throw new ArgumentOutOfRangeException(nameof(mean), mean, "The mean time must lie above 0 and be finite.");
        List<double> read = [.. times];
        foreach (var time in read)
        {
            if (!(time >= 0 && time <= 1e100)) throw new ArgumentOutOfRangeException(nameof(times), time, "A time between events must be 0 or more and finite.");
        }

        double? centre = mean ?? (read.Count == 0 ? null : read.Average());
        UndefinedReason? reason = read.Count == 0 ? UndefinedReason.NoEvents
            : mean is null && read.Count == 1 ? UndefinedReason.FewerThanTwoPoints
            : centre == 0 ? UndefinedReason.PointsAllAlike
            : null;
        return (read, centre, reason);
    }

    private static ControlChart Make(string method, ChartLimits limits, List<double> times, double? centre, bool given, UndefinedReason? reason, IEnumerable<RunRule>? rules, Func<ChartPoint, ChartPoint> judge)
    {
        var looked = ChartBuilder.Rules(rules);
        var plain = times.Select((time, index) => new ChartPoint(index) { Observed = time, Value = time, Reason = reason });
        if (reason is { } why) return ChartBuilder.Undefined(method, limits, plain, looked, centre, given, why);
        return new ControlChart(method, limits, RuleEvaluation.Judge([.. plain.Select(judge)], looked), looked) { Centre = centre, CentreGiven = given };
    }
}
