using System.Runtime.CompilerServices;
using MathNet.Numerics.Integration;

namespace ScreenStats.Statistics.Numerics;

/// <summary>
/// The integral over the whole line of a function given by its logarithm, with one hill. The trapezoid rule after u = centre + scale sinh(t):
/// tails that fall exponentially then fall doubly so, and the error falls exponentially with the number of points. The step is halved until
/// two sums agree to 1 in 100,000; the error of the finer one is about the square of that. Where they do not by a step of 1/32, because an edge
/// far from the top is sharper than the steps there, Gauss-Legendre panels are split instead until halves and whole agree.
/// </summary>
internal sealed class LineIntegral
{
    private const double Agreement = 1e-5;
    private const double Negligible = -34;

    // Points lie on a lattice of 1/32 from -20 to 20; the first step is 1/4, the last the lattice's own.
    private const int PerUnit = 32;
    private const int Farthest = 20 * PerUnit;
    private const int FirstStep = PerUnit / 4;
    private static readonly GaussLegendreRule Rule = new(-1, 1, 10);
    private static readonly double[] Sinh = [.. Enumerable.Range(0, Farthest + 1).Select(k => Math.Sinh((double)k / PerUnit))];
    private static readonly double[] Cosh = [.. Enumerable.Range(0, Farthest + 1).Select(k => Math.Cosh((double)k / PerUnit))];

    private double[] weights = new double[64];
    private double[] logs = new double[64];
    private int count;
    private double highest;

    // The sum of the first points, and what it was measured from: a later sum goes on from there.
    private double summed;
    private int summedPoints;
    private double summedFrom;

    /// <summary>The logarithm of the integral, with the centre and the scale found first from where they stood before.</summary>
    public double LogOfIntegral(Func<double, double> log, ref double centre, ref double scale)
    {
        Climb(log, ref centre, ref scale);
        return LogOfIntegral(log, centre, scale);
    }

    /// <summary>The logarithm of the integral.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public double LogOfIntegral(Func<double, double> log, double centre, double scale)
    {
        (count, summed, summedPoints) = (0, 0, 0);
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
            if (Math.Abs(sum - (2 * coarse)) < Agreement * sum) return highest + Math.Log(sum * step * scale / PerUnit);
        }

        for (var again = 0; double.IsFinite(highest) && again < 20; again++)
        {
            // A top between the points shows itself here; then all is measured from it.
            var top = highest;
            var total = ByPanels(log, centre, scale, left, right, sum / PerUnit);
            if (highest <= top + 1) return top + Math.Log(scale * total);
            sum = PerUnit * 1e-3;
        }

        return highest;
    }

    /// <summary>
    /// Brackets the top of a hill by steps that double, narrows the bracket by the golden section until neither end lies more than 1 below the
    /// middle, and takes as scale the distance at which the steeper side has fallen by about a half.
    /// </summary>
    public static void Climb(Func<double, double> log, ref double centre, ref double scale)
    {
        const double Golden = 0.3819660112501051;
        scale = Math.Clamp(scale, 1e-12, 4);
        var (a, b, d) = (centre - scale, centre, centre + scale);
        var (atA, atB, atD) = (log(a), log(b), log(d));
        for (var step = 0; step < 100 && (atA > atB || atD > atB); step++)
        {
            var width = 2 * (d - a);
            if (atA > atD) (a, b, d, atA, atB, atD) = (a - width, a, b, log(a - width), atA, atB);
            else (a, b, d, atA, atB, atD) = (b, d, d + width, atB, atD, log(d + width));
        }

        if (double.IsNegativeInfinity(atB)) return;
        for (var step = 0; step < 200 && Math.Max(atB - atA, atB - atD) > 1 && d - a > 1e-13 * (1 + Math.Abs(b)); step++)
        {
            var right = d - b > b - a;
            var next = right ? b + (Golden * (d - b)) : b - (Golden * (b - a));
            var at = log(next);
            if (at > atB)
            {
                if (right) (a, atA) = (b, atB);
                else (d, atD) = (b, atB);
                (b, atB) = (next, at);
            }
            else if (right)
            {
                (d, atD) = (next, at);
            }
            else
            {
                (a, atA) = (next, at);
            }
        }

        centre = b;
        scale = Math.Max(1e-12, Math.Min(b - a, d - b));
        var drop = Math.Max(atB - log(b - scale), atB - log(b + scale));
        for (var step = 0; step < 60 && drop < 0.15 && scale < 4; step++)
        {
            scale = Math.Min(4, scale * (drop > 0.01 ? Math.Sqrt(0.5 / drop) : 4));
            drop = Math.Max(atB - log(b - scale), atB - log(b + scale));
        }

        for (var step = 0; step < 60 && drop > 2; step++)
        {
            scale /= 1.7;
            drop = Math.Max(atB - log(b - scale), atB - log(b + scale));
        }
    }

    private double ByPanels(Func<double, double> log, double centre, double scale, int left, int right, double about)
    {
        const int Width = PerUnit / 2;
        var top = highest;
        double At(double t)
        {
            var value = log(centre + (scale * Math.Sinh(t)));
            if (value > highest) highest = value;
            return Math.Exp(Math.Min(value - top, 50)) * Math.Cosh(t);
        }

        double Panel(double from, double to)
        {
            double sum = 0;
            for (var index = 0; index < Rule.Abscissas.Length; index++)
                sum += Rule.Weights[index] * At(((from + to) + ((to - from) * Rule.Abscissas[index])) / 2);
            return sum * (to - from) / 2;
        }

        double Split(double from, double to, double whole, int depth)
        {
            var middle = (from + to) / 2;
            var (lower, upper) = (Panel(from, middle), Panel(middle, to));
            return depth == 0 || Math.Abs(lower + upper - whole) < 1e-7 * about
                ? lower + upper
                : Split(from, middle, lower, depth - 1) + Split(middle, to, upper, depth - 1);
        }

        double total = 0;
        for (var k = left; k < right; k += Width)
        {
            var (from, to) = ((double)k / PerUnit, (double)Math.Min(k + Width, right) / PerUnit);
            total += Split(from, to, Panel(from, to), 18);
        }

        return total;
    }

    // Called millions of times within tenths of a second: compiled for good at once.
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private double Add(Func<double, double> log, double centre, double scale, int k)
    {
        var value = log(centre + (scale * (k < 0 ? -Sinh[-k] : Sinh[k])));
        if (count == weights.Length)
        {
            Array.Resize(ref weights, 2 * count);
            Array.Resize(ref logs, 2 * count);
        }

        weights[count] = Cosh[Math.Abs(k)];
        logs[count++] = value;
        if (value > highest) highest = value;
        return value;
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private double Sum()
    {
        if (summedFrom != highest) (summed, summedPoints, summedFrom) = (0, 0, highest);
        for (; summedPoints < count; summedPoints++) summed += weights[summedPoints] * Math.Exp(logs[summedPoints] - highest);
        return summed;
    }
}
