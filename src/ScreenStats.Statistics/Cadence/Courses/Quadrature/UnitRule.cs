using MathNet.Numerics.Integration;

namespace ScreenStats.Statistics.Cadence.Courses.Quadrature;

/// <summary>Gauss-Legendre nodes and weights on [0, 1].</summary>
internal sealed class UnitRule
{
    public const int MostNodes = 4;

    private static readonly UnitRule[] Rules = [.. Enumerable.Range(1, MostNodes).Select(count => new UnitRule(count))];

    private UnitRule(int count)
    {
        (Nodes, Weights) = (new double[count], new double[count]);
        if (count == 1)
        {
            (Nodes[0], Weights[0]) = (0.5, 1);
            return;
        }

        var rule = new GaussLegendreRule(0, 1, count);
        for (var i = 0; i < count; i++) (Nodes[i], Weights[i]) = (rule.GetAbscissa(i), rule.GetWeight(i));
    }

    public double[] Nodes { get; }

    public double[] Weights { get; }

    /// <summary>The smallest rule that is exact for polynomials of a degree, or the largest there is.</summary>
    public static UnitRule ForDegree(int degree) => Rules[Math.Min(degree / 2, MostNodes - 1)];
}
