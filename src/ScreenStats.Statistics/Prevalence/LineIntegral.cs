namespace ScreenStats.Statistics.Prevalence;

/// <summary>
/// The integral over the whole line of a function given by its logarithm, with one hill. The trapezoid rule after u = centre + scale sinh(t):
/// tails that fall exponentially then fall doubly so, and the error falls exponentially with the number of points. The step is halved until
/// two sums agree to a millionth; the error of the finer one is about the square of that.
/// </summary>
internal sealed class LineIntegral
{
    private const double FirstStep = 0.25;
    private const double Negligible = -42;
    private const double Farthest = 8;
    private const int Halvings = 7;

    private readonly List<(double Parameter, double Log)> points = [];

    /// <summary>The logarithm of the integral, with the centre and the scale found first from where they stood before.</summary>
    public double LogOfIntegral(Func<double, double> log, ref double centre, ref double scale)
    {
        Climb(log, ref centre, ref scale);
        return LogOfIntegral(log, centre, scale);
    }

    /// <summary>The logarithm of the integral.</summary>
    public double LogOfIntegral(Func<double, double> log, double centre, double scale)
    {
        points.Clear();
        var step = FirstStep;
        points.Add((0, log(centre)));
        var highest = points[0].Log;
        var (left, right) = (0.0, 0.0);
        foreach (var sign in (ReadOnlySpan<int>)[-1, 1])
        {
            var last = points[0].Log;
            for (var k = 1; k * step <= Farthest; k++)
            {
                var t = sign * k * step;
                var value = log(centre + (scale * Math.Sinh(t)));
                points.Add((t, value));
                highest = Math.Max(highest, value);
                if (sign < 0) left = t;
                else right = t;
                if (value < highest + Negligible && value <= last) break;
                last = value;
            }
        }

        var sum = Sum(0, highest);
        for (var halving = 0; halving < Halvings; halving++)
        {
            var from = points.Count;
            for (var t = left + (step / 2); t < right; t += step)
            {
                var value = log(centre + (scale * Math.Sinh(t)));
                points.Add((t, value));
                if (value > highest)
                {
                    sum *= Math.Exp(highest - value);
                    highest = value;
                }
            }

            var finer = sum + Sum(from, highest);
            step /= 2;
            var agree = Math.Abs(finer - (2 * sum)) < 1e-6 * finer;
            sum = finer;
            if (agree) break;
        }

        return highest + Math.Log(sum * step * scale);
    }

    /// <summary>Steps towards the top of a hill until a parabola through three points a scale apart has its top near the middle one.</summary>
    public static void Climb(Func<double, double> log, ref double centre, ref double scale)
    {
        var here = log(centre);
        for (var step = 0; step < 80; step++)
        {
            scale = Math.Clamp(scale, 1e-9, 4);
            var (below, above) = (log(centre - scale), log(centre + scale));
            if (double.IsNegativeInfinity(here) && double.IsNegativeInfinity(below) && double.IsNegativeInfinity(above)) return;
            var bend = below + above - (2 * here);
            if (bend < 0 && double.IsFinite(bend))
            {
                var shift = 0.5 * (below - above) / bend;
                var width = 1 / Math.Sqrt(-bend);
                if (Math.Abs(shift) <= 0.5 && width is > 0.4 and < 2.5) return;
                if (Math.Abs(shift) <= 3)
                {
                    centre += shift * scale;
                    scale *= Math.Clamp(width, 0.02, 4);
                    here = log(centre);
                    continue;
                }
            }

            if (!double.IsFinite(bend) && here >= below && here >= above)
            {
                scale /= 8;
                continue;
            }

            (centre, here) = above > below ? (centre + scale, above) : (centre - scale, below);
            scale *= 2;
        }
    }

    private double Sum(int from, double highest)
    {
        double sum = 0;
        for (var index = from; index < points.Count; index++) sum += Math.Exp(points[index].Log - highest) * Math.Cosh(points[index].Parameter);
        return sum;
    }
}
