using ScreenStats.Statistics.Numerics;

namespace ScreenStats.Statistics.Trends.Smooths.Grids;

/// <summary>The distribution of one logit: its density at the points of a lattice, 0 beyond them.</summary>
internal sealed class LevelMarginal
{
    // Integral of the polynomial through eight points over the middle segment, and the same for any part of it by Gauss-Legendre's five points.
    private static readonly double[] Middle = [-191, 1879, -9531, 68323, 68323, -9531, 1879, -191];
    private static readonly double[] Nodes = [0.046910077030668, 0.2307653449471585, 0.5, 0.7692346550528415, 0.953089922969332];
    private static readonly double[] Weights = [0.1184634425280945, 0.2393143352496832, 0.2844444444444444, 0.2393143352496832, 0.1184634425280945];
    private static readonly double[] Barycentric = [-1, 7, -21, 35, -35, 21, -7, 1];

    private readonly double from;
    private readonly double step;
    private readonly double[] density;
    private readonly double[] below;

    /// <summary>Takes densities up to a factor.</summary>
    /// <param name="from">The place of the first.</param>
    /// <param name="step">The distance of two.</param>
    /// <param name="values">The densities; kept.</param>
    /// <param name="rates">The rates at their places.</param>
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
        return below[i] + Part(i, at - i);
    }

    /// <summary>The place below which the logit lies with a chance.</summary>
    public double Quantile(double chance)
    {
        var i = Array.BinarySearch(below, chance);
        if (i < 0) i = Math.Max(0, ~i - 1);
        if (i >= below.Length - 1) return from + (step * (below.Length - 1));
        var wanted = chance - below[i];
        if (wanted <= 0) return from + (step * i);
        return from + (step * (i + Root.Between(part => Part(i, part) - wanted, 0, 1)));
    }

    private double At(int i) => i >= 0 && i < density.Length ? density[i] : 0;

    private double Part(int i, double part)
    {
        if (part <= 0) return 0;
        double sum = 0;
        for (var k = 0; k < Nodes.Length; k++) sum += Weights[k] * Interpolated(i, part * Nodes[k]);
        return sum * part;
    }

    private double Interpolated(int i, double part)
    {
        double top = 0, bottom = 0;
        for (var j = 0; j < 8; j++)
        {
            var distance = part - (j - 3);
            if (distance == 0) return At(i + j - 3);
            var weight = Barycentric[j] / distance;
            top += weight * At(i + j - 3);
            bottom += weight;
        }

        return top / bottom;
    }
}
