namespace ScreenStats.Statistics.Numerics;

/// <summary>Nodes and weights of Gauss-Hermite quadrature, the weights times e to the node squared so that none underflows.</summary>
/// <remarks>
/// Nodes: bisection by the number of negative pivots of the recurrence's matrix, then Newton's steps; weights from the Hermite functions. Source: Golub GH,
/// Welsch JH, Math Comp 1969;23:221-230 (from memory).
/// </remarks>
internal sealed class HermiteRule
{
    private HermiteRule(double[] nodes, double[] weights)
    {
        Nodes = nodes;
        Weights = weights;
        LogWeights = Array.ConvertAll(weights, Math.Log);
    }

    public double[] Nodes { get; }

    /// <summary>Weights with which Σ weight f(node) is the integral of f over the line, for f a polynomial times e^(-x²).</summary>
    public double[] Weights { get; }

    /// <summary>The logarithms of the weights.</summary>
    public double[] LogWeights { get; }

    public static HermiteRule Of(int count)
    {
        var (nodes, weights) = (new double[count], new double[count]);
        for (var k = 0; k < count; k++)
        {
            var (low, high) = (-Math.Sqrt((2 * count) + 1), Math.Sqrt((2 * count) + 1));
            for (var step = 0; step < 60; step++)
            {
                var middle = (low + high) / 2;
                if (Below(count, middle) > k) high = middle;
                else low = middle;
            }

            var x = 2 * k + 1 == count ? 0 : (low + high) / 2;
            var (last, beforeLast, _) = Functions(count, x);
            if (beforeLast != 0) x -= last / (Math.Sqrt(2.0 * count) * beforeLast);
            nodes[k] = x;
            weights[k] = 1 / Functions(count, x).Squares;
        }

        return new HermiteRule(nodes, weights);
    }

    /// <summary>How many nodes lie below x.</summary>
    private static int Below(int count, double x)
    {
        var negative = 0;
        var pivot = -x;
        for (var j = 0; j < count; j++)
        {
            if (j > 0) pivot = -x - (j / 2.0 / (pivot == 0 ? 1e-300 : pivot));
            if (pivot < 0) negative++;
        }

        return negative;
    }

    /// <summary>The Hermite function of this order and the one before at x, and the sum of the squares of all before this order.</summary>
    private static (double Last, double BeforeLast, double Squares) Functions(int count, double x)
    {
        double before = 0, current = Math.Pow(Math.PI, -0.25) * Math.Exp(-0.5 * x * x), squares = 0;
        for (var j = 0; j < count; j++)
        {
            squares += current * current;
            (before, current) = (current, (x * Math.Sqrt(2.0 / (j + 1)) * current) - (Math.Sqrt((double)j / (j + 1)) * before));
        }

        return (current, before, squares);
    }
}
