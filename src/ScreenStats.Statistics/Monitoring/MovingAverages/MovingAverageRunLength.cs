using MathNet.Numerics.Integration;
using MathNet.Numerics.LinearAlgebra;

namespace ScreenStats.Statistics.Monitoring.MovingAverages;

/// <summary>How long an exponentially weighted moving average runs, on average, until it leaves its limits.</summary>
public static class MovingAverageRunLength
{
    /// <summary>The average run length for independent normal values, steady limits on both sides, starting at the centre.</summary>
    /// <param name="weight">λ, the weight of the newest value, in [0.001, 1].</param>
    /// <param name="width">The distance of the limits in standard errors of the average, in (0, 6].</param>
    /// <param name="shift">How many standard deviations of a value the true mean lies off the centre; finite.</param>
    /// <returns>The mean number of values up to and with the one that signals, at least 1.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A figure is outside its domain.</exception>
    /// <remarks>
    /// L(u) = 1 + (1/λ) ∫ L(y) φ((y - (1 - λ) u) / λ - δ) dy between the limits, solved at Gauss-Legendre nodes; relative error below 1e-6. With limits exact from the first value
    /// on, the first values signal somewhat sooner. Source: Crowder SV, Technometrics 1987;29:401-407 (from memory); Lucas and Saccucci 1990.
    /// </remarks>
    public static Estimate Normal(double weight, double width, double shift = 0)
    {
        MovingAverageChart.Check(weight, width);
        Guard.Finite(shift);
        if (weight < 0.001) throw new ArgumentOutOfRangeException(nameof(weight), weight, "The weight must be at least 0.001.");
        if (width > 6) throw new ArgumentOutOfRangeException(nameof(width), width, "The width must be at most 6.");
        var end = width * Math.Sqrt(weight / (2 - weight));
        var rule = new GaussLegendreRule(-end, end, end / weight < 12 ? 128 : end / weight < 30 ? 256 : 512);
        var nodes = rule.Order;
        var matrix = Matrix<double>.Build.Dense(nodes, nodes, (i, j) => (i == j ? 1 : 0) - (rule.GetWeight(j) * Kernel(rule.GetAbscissa(i), rule.GetAbscissa(j))));
        var lengths = matrix.LU().Solve(Vector<double>.Build.Dense(nodes, 1.0));
        double mean = 1;
        for (var j = 0; j < nodes; j++) mean += rule.GetWeight(j) * Kernel(0, rule.GetAbscissa(j)) * lengths[j];
        return Estimate.Point(Math.Max(1, mean), "average run length of a moving average, normal values");

        double Kernel(double from, double to)
        {
            var z = ((to - ((1 - weight) * from)) / weight) - shift;
            return Math.Exp(-0.5 * z * z) / (Math.Sqrt(2 * Math.PI) * weight);
        }
    }
}
