namespace ScreenStats.Statistics.Numerics;

/// <summary>
/// The integral over the whole line of a function given by its logarithm, with one hill. The trapezoid rule after u = centre + scale sinh(t):
/// tails that fall exponentially then fall doubly so, and the error falls exponentially with the number of points. The step is halved until
/// two sums agree to 1 in 100,000; the error of the finer one is about the square of that.
/// </summary>
internal sealed class LineIntegral
{
    private const double Agreement = 1e-5;
    private const double Negligible = -34;

    // Points lie on a lattice of 1/512 from -8 to 8; the first step is 1/4, the last the lattice's own.
    private const int PerUnit = 512;
    private const int Farthest = 8 * PerUnit;
    private const int FirstStep = PerUnit / 4;
    private static readonly double[] Sinh = [.. Enumerable.Range(0, Farthest + 1).Select(k => Math.Sinh((double)k / PerUnit))];
    private static readonly double[] Cosh = [.. Enumerable.Range(0, Farthest + 1).Select(k => Math.Cosh((double)k / PerUnit))];

    private readonly List<(double Weight, double Log)> points = [];
    private double highest;

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
        highest = double.NegativeInfinity;
        var first = Add(log, centre, scale, 0);
        int left = 0, right = 0;
        var last = first;
        for (var k = FirstStep; k <= Farthest; k += FirstStep)
        {
            var value = Add(log, centre, scale, left = -k);
            if (value < highest + Negligible && value <= last) break;
            last = value;
        }

        last = first;
        for (var k = FirstStep; k <= Farthest; k += FirstStep)
        {
            var value = Add(log, centre, scale, right = k);
            if (value < highest + Negligible && value <= last) break;
            last = value;
        }

        var step = FirstStep;
        var sum = Sum();
        while (step > 1)
        {
            var before = highest;
            for (var k = left + (step / 2); k < right; k += step) Add(log, centre, scale, k);
            var coarse = sum * Math.Exp(before - highest);
            sum = Sum();
            step /= 2;
            if (Math.Abs(sum - (2 * coarse)) < Agreement * sum) break;
        }

        return highest + Math.Log(sum * step * scale / PerUnit);
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

    private double Add(Func<double, double> log, double centre, double scale, int k)
    {
        var value = log(centre + (scale * (k < 0 ? -Sinh[-k] : Sinh[k])));
        points.Add((Cosh[Math.Abs(k)], value));
        if (value > highest) highest = value;
        return value;
    }

    private double Sum()
    {
        double sum = 0;
        foreach (var (weight, log) in points) sum += weight * Math.Exp(log - highest);
        return sum;
    }
}
