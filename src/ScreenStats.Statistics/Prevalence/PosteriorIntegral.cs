using System.Runtime.CompilerServices;
using ScreenStats.Statistics.Numerics;

namespace ScreenStats.Statistics.Prevalence;

/// <summary>
/// The posterior density of three shares, prevalence (0), sensitivity (1) and false-positive rate (2), after x positives and y negatives,
/// integrated over two of them at each value of the third. All on the logit scale, where a beta distribution has tails that fall
/// exponentially and no end that matters.
/// </summary>
/// <remarks>
/// Given two shares the probability of a positive is linear in the third, so the innermost logarithm is concave in that share and has one
/// mode, found by Newton steps on its derivative.
/// What is called millions of times within tenths of a second is compiled for good at once; otherwise most of it runs as it was first compiled.
/// </remarks>
internal sealed class PosteriorIntegral
{
    private readonly double x;
    private readonly double y;
    private readonly PosteriorAxis[] axes;
    private readonly LineIntegral inner = new();
    private readonly LineIntegral middle = new();
    private readonly double[] share = new double[3];
    private readonly double[] rest = new double[3];
    private double innerStart;
    private double middleStart;
    private double middleScale = 1;

    public PosteriorIntegral(double positives, double negatives, params PosteriorAxis[] axes)
    {
        x = positives;
        y = negatives;
        this.axes = axes;
    }

    /// <summary>Mean, deviation, median and intervals of one of the three.</summary>
    public PosteriorSummary Summary(int which, double confidence)
    {
        var axis = axes[which];
        if (axis.IsExact) return PosteriorSummary.Exact(axis.Value, confidence);

        // The prevalence is never exact; the innermost is the other accuracy where that is uncertain.
        var (second, third) = which switch { 0 => axes[2].IsExact ? (2, 1) : (1, 2), 1 => (0, 2), _ => (0, 1) };
        innerStart = Start(third);
        (middleStart, middleScale) = (Start(second), 1);
        var density = new MarginalDensity(u => Place(which, u) + Middle(second, third), Start(which));
        return density.Summary(confidence);
    }

    /// <summary>Where to look first: what is known of the share on its own.</summary>
    private double Start(int which) => axes[which].IsExact ? 0 : Math.Log(axes[which].Alpha / axes[which].Beta);

    /// <summary>Sets a share by its logit and answers the logarithm of its own density there.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private double Place(int which, double logit)
    {
        // ln(share) and ln(1 - share) without a difference.
        var odds = Math.Exp(-Math.Abs(logit));
        var larger = 1 / (1 + odds);
        var away = Math.Log(1 + odds);
        var (log, logRest) = logit >= 0 ? (-away, -logit - away) : (logit - away, -away);
        (share[which], rest[which]) = logit >= 0 ? (larger, odds * larger) : (odds * larger, larger);
        return (axes[which].Alpha * log) + (axes[which].Beta * logRest);
    }

    private void PlaceExact(int which)
    {
        share[which] = axes[which].Value;
        rest[which] = 1 - axes[which].Value;
    }

    private double Middle(int second, int third)
    {
        if (axes[second].IsExact)
        {
            PlaceExact(second);
            return Inner(third);
        }

        return middle.LogOfIntegral(u => Place(second, u) + Inner(third), ref middleStart, ref middleScale);
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private double Inner(int third)
    {
        var (q0, q1, r0, r1) = Ends(third);
        if (axes[third].IsExact)
        {
            PlaceExact(third);
            return LogLikelihood((rest[third] * q0) + (share[third] * q1), (rest[third] * r0) + (share[third] * r1));
        }

        var (a, b) = (axes[third].Alpha, axes[third].Beta);
        var scale = Mode(a, b, q0, q1, r0, r1);
        return inner.LogOfIntegral(
            [MethodImpl(MethodImplOptions.AggressiveOptimization)] (u) =>
            {
                var own = Place(third, u);
                return own + LogLikelihood((rest[third] * q0) + (share[third] * q1), (rest[third] * r0) + (share[third] * r1));
            },
            innerStart,
            scale);
    }

    /// <summary>The probabilities of a positive and of a negative where the share is 0 and where it is 1.</summary>
    private (double Q0, double Q1, double R0, double R1) Ends(int third) => third switch
    {
        1 => (rest[0] * share[2], share[0] + (rest[0] * share[2]), share[0] + (rest[0] * rest[2]), rest[0] * rest[2]),
        _ => (share[0] * share[1], (share[0] * share[1]) + rest[0], (share[0] * rest[1]) + rest[0], share[0] * rest[1]),
    };

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private double LogLikelihood(double q, double r) => (x == 0 ? 0 : x * Math.Log(q)) + (y == 0 ? 0 : y * Math.Log(r));

    /// <summary>Moves the innermost start near the mode and answers the width there.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private double Mode(double a, double b, double q0, double q1, double r0, double r1)
    {
        double low = -745, high = 745, scale = 1;
        var before = double.PositiveInfinity;
        var u = innerStart;
        var slope = q1 - q0;
        for (var step = 0; step < 100; step++)
        {
            var t = LogitScale.Fraction(u);
            var s = LogitScale.Fraction(-u);
            var q = (s * q0) + (t * q1);
            var r = (s * r0) + (t * r1);
            var (atX, atY) = (x == 0 ? 0 : x / q, y == 0 ? 0 : y / r);
            var pull = slope * (atX - atY);
            var first = (a * s) - (b * t) + (t * s * pull);
            var bend = slope * slope * ((x == 0 ? 0 : atX / q) + (y == 0 ? 0 : atY / r));
            var second = (t * s) * (-(a + b) + ((s - t) * pull) - (t * s * bend));
            if (first > 0) low = u;
            else high = u;
            if (second < 0) scale = Math.Min(2, 1 / Math.Sqrt(-second));

            // Newton's step where it stays in the bracket and keeps getting shorter, else the middle of the bracket.
            var next = second < 0 ? u - (first / second) : double.NaN;
            if (!(next > low && next < high && Math.Abs(next - u) <= 0.5 * before)) next = (low + high) / 2;
            var moved = before = Math.Abs(next - u);
            u = next;
            if (moved < 0.1 * scale && second < 0) break;
        }

        innerStart = u;
        return scale;
    }
}
