using System.Collections.Immutable;
using MathNet.Numerics.LinearAlgebra;

namespace ScreenStats.Statistics.LatentClass;

/// <summary>
/// The likelihood of two independent tests in K populations. The figures stand in the order prevalence 1..K, Se 1, Sp 1, Se 2, Sp 2;
/// the cells of a population in the order both positive, first only, second only, both negative.
/// </summary>
internal sealed class TwoTestLikelihood
{
    private readonly double[][] _counts;

    public TwoTestLikelihood(ImmutableArray<TwoTestCounts> populations) =>
        _counts = [.. populations.Select(one => new double[] { one.BothPositive, one.FirstOnly, one.SecondOnly, one.BothNegative })];

    public int Populations => _counts.Length;

    public int Size => Populations + 4;

    /// <summary>Whether either test is positive equally often in all populations: then nothing tells infected from uninfected.</summary>
    public bool PopulationsAlike => Enumerable.Range(1, Populations - 1).All(k => FirstShare(k) == FirstShare(0))
        || Enumerable.Range(1, Populations - 1).All(k => SecondShare(k) == SecondShare(0));

    public double Total(int population) => _counts[population].Sum();

    public double FirstShare(int population) => (_counts[population][0] + _counts[population][1]) / Total(population);

    public double SecondShare(int population) => (_counts[population][0] + _counts[population][2]) / Total(population);

    /// <summary>Share positive by both, minus the product of the shares positive by each.</summary>
    public double Covariation(int population)
    {
        var c = _counts[population];
        var n = Total(population);
        return ((c[0] * c[3]) - (c[1] * c[2])) / n / n;
    }

    public double Log(double[] figures)
    {
        double sum = 0;
        for (var k = 0; k < Populations; k++)
        {
            for (var cell = 0; cell < 4; cell++)
            {
                if (_counts[k][cell] == 0) continue;
                var (infected, free) = Chances(figures, k, cell);
                sum += _counts[k][cell] * Math.Log(infected + free);
            }
        }

        return sum;
    }

    public double Deviance(double[] figures)
    {
        double sum = 0;
        for (var k = 0; k < Populations; k++)
        {
            for (var cell = 0; cell < 4; cell++)
            {
                if (_counts[k][cell] == 0) continue;
                var (infected, free) = Chances(figures, k, cell);
                sum += 2 * _counts[k][cell] * Math.Log(_counts[k][cell] / (Total(k) * (infected + free)));
            }
        }

        return Math.Max(0, sum);
    }

    /// <summary>One step of the EM algorithm: expected infected of each cell, then plain shares.</summary>
    public double[] Expect(double[] figures)
    {
        // Each share is x / (x + y) of its own two sums, so that 0 and 1 stay what they are.
        var next = new double[Size];
        Span<double> right = stackalloc double[4];
        Span<double> wrong = stackalloc double[4];
        for (var k = 0; k < Populations; k++)
        {
            double infected = 0, free = 0;
            for (var cell = 0; cell < 4; cell++)
            {
                var (with, without) = Chances(figures, k, cell);
                var yes = with + without > 0 ? _counts[k][cell] * (with / (with + without)) : 0;
                var no = with + without > 0 ? _counts[k][cell] * (without / (with + without)) : 0;
                infected += yes;
                free += no;
                var firstPositive = cell is 0 or 1;
                var secondPositive = cell is 0 or 2;
                (firstPositive ? ref right[0] : ref wrong[0]) += yes;
                (firstPositive ? ref wrong[1] : ref right[1]) += no;
                (secondPositive ? ref right[2] : ref wrong[2]) += yes;
                (secondPositive ? ref wrong[3] : ref right[3]) += no;
            }

            next[k] = infected + free > 0 ? infected / (infected + free) : figures[k];
        }

        for (var i = 0; i < 4; i++)
            next[Populations + i] = right[i] + wrong[i] > 0 ? right[i] / (right[i] + wrong[i]) : figures[Populations + i];
        return next;
    }

    /// <summary>The step of Fisher scoring, inverse information times score; null where the information is singular.</summary>
    public double[]? Score(double[] figures)
    {
        var (information, score) = Information(figures);
        return Invert(information) is { } inverse ? (inverse * score).ToArray() : null;
    }

    /// <summary>The inverse of the expected information; null where it is singular.</summary>
    public double[,]? Covariance(double[] figures) => Invert(Information(figures).Information)?.ToArray();

    private static Matrix<double>? Invert(Matrix<double> information)
    {
        // Scaled to a unit diagonal, so that singular means singular and not small.
        var scale = information.Diagonal().PointwiseSqrt();
        if (scale.Any(value => !(value > 0) || !double.IsFinite(value))) return null;
        var scaled = information.PointwiseDivide(scale.OuterProduct(scale));
        if (!(scaled.Svd(computeVectors: false).S.Minimum() > 1e-12)) return null;
        return scaled.Inverse().PointwiseDivide(scale.OuterProduct(scale));
    }

    private (Matrix<double> Information, Vector<double> Score) Information(double[] figures)
    {
        var information = Matrix<double>.Build.Dense(Size, Size);
        var score = Vector<double>.Build.Dense(Size);
        for (var k = 0; k < Populations; k++)
        {
            for (var cell = 0; cell < 4; cell++)
            {
                var slope = Slope(figures, k, cell);
                var (infected, free) = Chances(figures, k, cell);
                var chance = infected + free;
                information += slope.OuterProduct(slope) * (Total(k) / chance);
                score += slope * (_counts[k][cell] / chance);
            }
        }

        return (information, score);
    }

    private (double Infected, double Free) Chances(double[] figures, int population, int cell)
    {
        var p = Populations;
        var firstPositive = cell is 0 or 1;
        var secondPositive = cell is 0 or 2;
        return (
            figures[population] * (firstPositive ? figures[p] : 1 - figures[p]) * (secondPositive ? figures[p + 2] : 1 - figures[p + 2]),
            (1 - figures[population]) * (firstPositive ? 1 - figures[p + 1] : figures[p + 1]) * (secondPositive ? 1 - figures[p + 3] : figures[p + 3]));
    }

    private Vector<double> Slope(double[] figures, int population, int cell)
    {
        var p = Populations;
        var firstPositive = cell is 0 or 1;
        var secondPositive = cell is 0 or 2;
        var theta = figures[population];
        var first = firstPositive ? figures[p] : 1 - figures[p];
        var second = secondPositive ? figures[p + 2] : 1 - figures[p + 2];
        var firstFree = firstPositive ? 1 - figures[p + 1] : figures[p + 1];
        var secondFree = secondPositive ? 1 - figures[p + 3] : figures[p + 3];
        var slope = Vector<double>.Build.Dense(Size);
        slope[population] = (first * second) - (firstFree * secondFree);
        slope[p] = theta * second * (firstPositive ? 1 : -1);
        slope[p + 1] = (1 - theta) * secondFree * (firstPositive ? -1 : 1);
        slope[p + 2] = theta * first * (secondPositive ? 1 : -1);
        slope[p + 3] = (1 - theta) * firstFree * (secondPositive ? -1 : 1);
        return slope;
    }
}
