using MathNet.Numerics;
using MathNet.Numerics.LinearAlgebra;
using ScreenStats.Statistics.Monitoring.Sequential.CumulativeSums;
using ScreenStats.Statistics.Numerics;

namespace ScreenStats.Statistics.Monitoring.Sequential.NormalSums;

/// <summary>Average run lengths of cumulative sums of normal values, in units of their standard deviation.</summary>
/// <remarks>S = max(0, S + z - k), signal at S ≥ h; for a fall the same of -z. The path over data is <see cref="CumulativeSum.Path"/>.</remarks>
public static class NormalCumulativeSum
{
    private const double Longest = 1e11;

    /// <summary>The average number of values to a signal.</summary>
    /// <param name="reference">The reference value k, from 0 to 10.</param>
    /// <param name="limit">The limit h, above 0 and at most 50.</param>
    /// <param name="shift">The true shift of the mean, finite; up is above 0.</param>
    /// <param name="sides">One sum or two.</param>
    /// <param name="headStart">The value at the start (fast initial response, often h/2), 0 or more and below h; of both sums where there are two.</param>
    /// <returns>The average; undefined above 1e11, where the method loses its digits.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument outside its domain.</exception>
    /// <remarks>
    /// Page's integral equation L(u) = 1 + L(0) Φ(k - u - δ) + ∫ L(y) φ(y + k - u - δ) dy over [0, h], by Gauss-Legendre nodes. Of two sums
    /// 1 / L = 1 / L⁺ + 1 / L⁻; with head starts u L = (L⁺(u) L⁻(0) + L⁺(0) L⁻(u) - L⁺(0) L⁻(0)) / (L⁺(0) + L⁻(0)), checked by simulation for h/2.
    /// Relative error below 1e-8 up to a run length of 1e7. Source: Page
    /// ES, Biometrika 1954;41:100-115; Lucas JM, Crosier RB, Technometrics 1982;24:199-205 (from memory).
    /// </remarks>
    public static Estimate AverageRunLength(
        double reference, double limit, double shift, CumulativeSumSides sides = CumulativeSumSides.One, double headStart = 0)
    {
        Check(reference, limit, shift, sides);
        if (!(headStart >= 0 && headStart < limit))
            throw new ArgumentOutOfRangeException(nameof(headStart), headStart, "The head start must be 0 or more and below the limit.");
        var value = Length(reference, limit, shift, sides, headStart);
        return value is > 0 and < Longest ? Estimate.Point(value, "integral equation, Gauss-Legendre") : Estimate.Undefined(UndefinedReason.TooLarge);
    }

    /// <summary>Siegmund's approximation, to compare with the average by the integral equation.</summary>
    /// <param name="reference">The reference value k, from 0 to 10.</param>
    /// <param name="limit">The limit h, above 0 and at most 50.</param>
    /// <param name="shift">The true shift of the mean, finite.</param>
    /// <param name="sides">One sum or two.</param>
    /// <returns>The average; undefined above 1e11.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument outside its domain.</exception>
    /// <remarks>
    /// With b = h + 1.166 and Δ = δ - k: (e^(-2Δb) + 2Δb - 1) / (2Δ²), b² where Δ = 0. Source: Siegmund D, Sequential Analysis, 1985, page 27 (from
    /// memory).
    /// </remarks>
    public static Estimate Siegmund(double reference, double limit, double shift, CumulativeSumSides sides = CumulativeSumSides.One)
    {
        Check(reference, limit, shift, sides);
        var height = limit + 1.166;
        double Side(double drift)
        {
            var x = 2 * drift * height;

            // e^-x + x - 1 over x², by its series where x is small.
            var share = Math.Abs(x) < 1e-3 ? 0.5 - (x / 6) + (x * x / 24) : (Math.Exp(-x) + x - 1) / (x * x);
            return 2 * height * height * share;
        }

        var up = Side(shift - reference);
        var value = sides == CumulativeSumSides.One ? up : 1 / ((1 / up) + (1 / Side(-shift - reference)));
        return value < Longest ? Estimate.Point(value, "Siegmund's approximation") : Estimate.Undefined(UndefinedReason.TooLarge);
    }

    /// <summary>The limit for a wanted average number of values to a false alarm.</summary>
    /// <param name="reference">The reference value k, from 0 to 10.</param>
    /// <param name="averageRunLength">The average run length without shift, above 1 and at most 10,000,000.</param>
    /// <param name="sides">One sum or two.</param>
    /// <returns>The limit; undefined where it would not lie above 0 or not below 50.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument outside its domain.</exception>
    public static Estimate LimitFor(double reference, double averageRunLength, CumulativeSumSides sides = CumulativeSumSides.One)
    {
        Check(reference, 1, 0, sides);
        if (!(averageRunLength is > 1 and <= 1e7))
            throw new ArgumentOutOfRangeException(nameof(averageRunLength), averageRunLength, "The average run length must be above 1 and at most 10,000,000.");
        double Excess(double limit) => Math.Log(Math.Clamp(Length(reference, limit, 0, sides, 0), 1e-3, Longest) / averageRunLength);
        const double Least = 1e-6;
        if (Excess(Least) > 0) return Estimate.Undefined(UndefinedReason.NoLimitFound);
        var high = 1.0;
        while (Excess(high) < 0)
        {
            high *= 1.5;
            if (high > 50) return Estimate.Undefined(UndefinedReason.NoLimitFound);
        }

        return Estimate.Point(Root.Between(Excess, high == 1 ? Least : high / 1.5, high), "integral equation, Gauss-Legendre");
    }

    private static double Length(double reference, double limit, double shift, CumulativeSumSides sides, double headStart)
    {
        var (up, upStart) = OneSide(reference, limit, shift, headStart);
        if (sides == CumulativeSumSides.One) return upStart;
        var (down, downStart) = OneSide(reference, limit, -shift, headStart);

        // Divided through by both, so that a side that practically never signals does not overflow.
        return ((upStart / up) + (downStart / down) - 1) / ((1 / up) + (1 / down));
    }

    /// <summary>The averages from 0 and from the head start.</summary>
    private static (double FromZero, double FromStart) OneSide(double reference, double limit, double shift, double headStart)
    {
        var (nodes, weights) = LegendreNodes(40 + (8 * (int)Math.Ceiling(limit)), limit);
        var n = nodes.Length;
        var drift = reference - shift;

        // Unknowns: the average from 0, then from each node.
        var matrix = Matrix<double>.Build.Dense(n + 1, n + 1, (i, j) =>
        {
            var from = i == 0 ? 0 : nodes[i - 1];
            var kernel = j == 0 ? Below(drift - from) : weights[j - 1] * Density(nodes[j - 1] + drift - from);
            return (i == j ? 1 : 0) - kernel;
        });
        var solved = matrix.Solve(Vector<double>.Build.Dense(n + 1, 1.0));
        if (headStart == 0) return (solved[0], solved[0]);
        var start = 1 + (solved[0] * Below(drift - headStart));
        for (var j = 0; j < n; j++) start += solved[j + 1] * weights[j] * Density(nodes[j] + drift - headStart);
        return (solved[0], start);
    }

    /// <summary>Gauss-Legendre nodes on [0, high] by Newton steps to the last digits; the package's own stop at 1e-10.</summary>
    private static (double[] Nodes, double[] Weights) LegendreNodes(int count, double high)
    {
        var nodes = new double[count];
        var weights = new double[count];
        for (var i = 0; i < count; i++)
        {
            var x = Math.Cos(Math.PI * (i + 0.75) / (count + 0.5));
            double slope = 1;
            for (var step = 0; step < 8; step++)
            {
                double before = 0, value = 1;
                for (var j = 1; j <= count; j++) (before, value) = (value, ((((2 * j) - 1) * x * value) - ((j - 1) * before)) / j);
                slope = count * ((x * value) - before) / ((x * x) - 1);
                x -= value / slope;
            }

            nodes[i] = high * (1 - x) / 2;
            weights[i] = high / ((1 - (x * x)) * slope * slope);
        }

        return (nodes, weights);
    }

    private static double Density(double z) => Math.Exp(-0.5 * z * z) / Math.Sqrt(2 * Math.PI);

    private static double Below(double z) => 0.5 * SpecialFunctions.Erfc(-z / Math.Sqrt(2));

    private static void Check(double reference, double limit, double shift, CumulativeSumSides sides)
    {
        if (!(reference is >= 0 and <= 10)) throw new ArgumentOutOfRangeException(nameof(reference), reference, "The reference value lies between 0 and 10 standard deviations.");
        if (!(limit is > 0 and <= 50)) throw new ArgumentOutOfRangeException(nameof(limit), limit, "The limit lies above 0 and is at most 50 standard deviations.");
        Guard.Finite(shift);
        if (sides is not (CumulativeSumSides.One or CumulativeSumSides.Two)) throw new ArgumentOutOfRangeException(nameof(sides), sides, "Not a choice this library knows.");
    }
}
