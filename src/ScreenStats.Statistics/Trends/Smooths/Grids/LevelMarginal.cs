using System.Runtime.CompilerServices;

namespace ScreenStats.Statistics.Trends.Smooths.Grids;

/// <summary>The distribution of one logit: its density at the points of a lattice, 0 beyond them.</summary>
internal sealed class LevelMarginal
{
    // Integral of the polynomial through eight points over the middle segment, times 120960.
    private static readonly double[] Middle = [-191, 1879, -9531, 68323, 68323, -9531, 1879, -191];

    private readonly double from;
    private readonly double step;
    private readonly double[] density;
    private readonly double[] below;

    /// <summary>Takes densities up to a factor.</summary>
    /// <param name="from">The place of the first.</param>
    /// <param name="step">The distance of two.</param>
    /// <param name="values">The densities; kept.</param>
    /// <param name="rates">The rates at their places.</param>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public LevelMarginal(double from, double step, double[] values, ReadOnlySpan<double> rates)
    {
        (this.from, this.step, density) = (from, step, values);
        double sum = 0, first = 0, rate = 0;
        for (var i = 0; i < values.Length; i++)
        {
            sum += values[i];
            first += values[i] * i;
            rate += values[i] * rates[i];
        }

        var centre = first / sum;
        double second = 0;
        for (var i = 0; i < values.Length; i++) second += values[i] * (i - centre) * (i - centre);
        Mean = from + (step * centre);
        Variance = step * step * second / sum;
        Rate = rate / sum;
        for (var i = 0; i < values.Length; i++) values[i] /= sum;
        below = new double[values.Length];
        for (var i = 0; i + 1 < values.Length; i++)
        {
            double part = 0;
            for (var j = 0; j < 8; j++) part += Middle[j] * At(i + j - 3);
            below[i + 1] = below[i] + (part / 120960);
        }
    }

    public double Mean { get; }

    public double Variance { get; }

    public double Rate { get; }

    /// <summary>The chance of a logit below a place.</summary>
    public double Below(double logit)
    {
        var at = (logit - from) / step;
        if (at <= 0) return 0;
        if (at >= density.Length - 1) return 1;
        var i = (int)at;
        return below[i] + Part(i, at - i).Value;
    }

    /// <summary>The place below which the logit lies with a chance.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public double Quantile(double chance)
    {
        var i = Array.BinarySearch(below, chance);
        if (i < 0) i = Math.Max(0, ~i - 1);
        if (i >= below.Length - 1) return from + (step * (below.Length - 1));
        var wanted = chance - below[i];
        if (wanted <= 0) return from + (step * i);
        var (least, most, part) = (0.0, 1.0, wanted / (below[i + 1] - below[i]));
        for (var again = 0; again < 60; again++)
        {
            var (value, slope) = Part(i, part);
            if (value > wanted) most = part;
            else least = part;
            var next = part - ((value - wanted) / slope);
            if (!(next > least && next < most)) next = (least + most) / 2;
            if (Math.Abs(next - part) < 1e-14) break;
            part = next;
        }

        return from + (step * (i + part));
    }

    private double At(int i) => i >= 0 && i < density.Length ? density[i] : 0;

    private double Slope(int i) => (At(i - 2) - At(i + 2) + (8 * (At(i + 1) - At(i - 1)))) / 12;

    /// <summary>The chance between a point and a part of the way to the next, and the density there: the polynomial that keeps chance, density and slope at both.</summary>
    private (double Value, double Slope) Part(int i, double part)
    {
        var (whole, v, w, a, b) = (below[i + 1] - below[i], density[i], density[i + 1], Slope(i), Slope(i + 1));
        var third = (10 * whole) - (6 * v) - (4 * w) - (1.5 * a) + (0.5 * b);
        var fourth = (-15 * whole) + (8 * v) + (7 * w) + (1.5 * a) - b;
        var fifth = (6 * whole) - (3 * (v + w)) - (0.5 * (a - b));
        return (part * (v + (part * ((a / 2) + (part * (third + (part * (fourth + (part * fifth)))))))),
            v + (part * (a + (part * ((3 * third) + (part * ((4 * fourth) + (part * 5 * fifth))))))));
    }
}
