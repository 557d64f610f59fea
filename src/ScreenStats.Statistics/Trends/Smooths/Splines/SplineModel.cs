using ScreenStats.Statistics.Numerics;

namespace ScreenStats.Statistics.Trends.Smooths.Splines;

/// <summary>The counts on their basis, fitted for one weight of the penalty after the other.</summary>
internal sealed class SplineModel
{
    private const int MostSteps = 200;

    private readonly SplineFamily family;
    private readonly SplineCount[] counts;
    private readonly (int First, double[] Values)[] rows;
    private readonly double[,] penalty;
    private readonly double penaltyLog;
    private readonly double saturated;
    private double[] coefficients;

    public SplineModel(SplineFamily family, SplineCount[] counts, SplineBasis basis)
    {
        (this.family, this.counts, Basis) = (family, counts, basis);
        rows = Array.ConvertAll(counts, count => basis.At(count.At));
        penalty = basis.Penalty();
        saturated = counts.Sum(count => family.Saturated(count));
        coefficients = new double[basis.Count];
        var (events, trials) = (counts.Sum(count => count.Events), counts.Sum(count => count.Trials));
        Array.Fill(coefficients, family == SplineFamily.Poisson ? Math.Log(events / trials) : Math.Log(events / (trials - events)));

        // The product of the eigenvalues of D' D that are not 0 is the determinant of D D', a band matrix.
        var m = basis.Count - 2;
        var products = new double[m, m];
        double[] band = [6, -4, 1];
        for (var i = 0; i < m; i++)
        {
            for (var j = Math.Max(0, i - 2); j <= Math.Min(m - 1, i + 2); j++) products[i, j] = band[Math.Abs(i - j)];
        }

        penaltyLog = LogDeterminant(SymmetricMatrix.Factor(products, 0, out _)!);
        var information = Information(coefficients);
        double trace = 0, penaltyTrace = 0;
        for (var i = 0; i < basis.Count; i++) (trace, penaltyTrace) = (trace + information[i, i], penaltyTrace + penalty[i, i]);
        Scale = trace / penaltyTrace;
    }

    public SplineBasis Basis { get; }

    /// <summary>The weight at which the penalty is as heavy as the counts.</summary>
    public double Scale { get; }

    /// <summary>The fit at a weight of the penalty; null where it does not settle. It starts where the last one ended.</summary>
    /// <remarks>Newton's steps on the penalised likelihood, which is concave, halved while it falls.</remarks>
    public SplineSolution? At(double smoothing)
    {
        var beta = (double[])coefficients.Clone();
        var value = Penalised(beta, smoothing);
        for (var step = 0; step < MostSteps; step++)
        {
            var slope = new double[beta.Length];
            for (var i = 0; i < counts.Length; i++)
            {
                var (first, values) = rows[i];
                var residual = family.Slopes(counts[i], Link(beta, i)).Residual;
                for (var j = 0; j < 4; j++) slope[first + j] += values[j] * residual;
            }

            for (var i = 0; i < beta.Length; i++)
            {
                for (var j = Math.Max(0, i - 2); j <= Math.Min(beta.Length - 1, i + 2); j++) slope[i] -= smoothing * penalty[i, j] * beta[j];
            }

            if (Factor(beta, smoothing) is not { } factor) return null;
            var change = SymmetricMatrix.Solve(factor, slope);
            double promise = 0;
            for (var i = 0; i < beta.Length; i++) promise += change[i] * slope[i];
            if (promise <= 1e-18 * (1 + Math.Abs(value)))
            {
                coefficients = beta;
                return Solution(beta, smoothing, factor);
            }

            var (length, moved, next) = (1.0, false, value);
            for (var half = 0; half < 60 && !moved; half++)
            {
                var trial = beta.Select((b, i) => b + (length * change[i])).ToArray();
                next = Penalised(trial, smoothing);
                moved = next >= value - (1e-13 * Math.Abs(value)) && double.IsFinite(next);
                if (moved) beta = trial;
                else length /= 2;
            }

            if (!moved || (next - value <= 1e-15 * Math.Abs(value) && promise < 1e-11))
            {
                if (promise > 1e-9) return null;
                coefficients = beta;
                return Factor(beta, smoothing) is { } last ? Solution(beta, smoothing, last) : null;
            }

            value = next;
        }

        return null;
    }

    /// <summary>The logarithm of the score of cross-validation; infinite where next to no freedom is left.</summary>
    public double LogCrossValidation(SplineSolution solution) =>
        counts.Length - solution.DegreesOfFreedom >= counts.Length / 10.0 && solution.CrossValidation is { } score ? Math.Log(score) : double.PositiveInfinity;

    /// <summary>The spline and its variance at a place.</summary>
    public (double Link, double Variance) At(SplineSolution solution, double place)
    {
        var (first, values) = Basis.At(place);
        double link = 0, variance = 0;
        for (var j = 0; j < 4; j++)
        {
            link += values[j] * solution.Coefficients[first + j];
            for (var k = 0; k < 4; k++) variance += values[j] * values[k] * solution.Covariance[first + j, first + k];
        }

        return (link, Math.Max(0, variance));
    }

    private double Link(double[] beta, int i)
    {
        var (first, values) = rows[i];
        return (values[0] * beta[first]) + (values[1] * beta[first + 1]) + (values[2] * beta[first + 2]) + (values[3] * beta[first + 3]);
    }

    private double Penalised(double[] beta, double smoothing)
    {
        double log = 0;
        for (var i = 0; i < counts.Length; i++) log += family.LogLikelihood(counts[i], Link(beta, i));
        return log - (0.5 * smoothing * Roughness(beta));
    }

    private static double Roughness(double[] beta)
    {
        double sum = 0;
        for (var i = 0; i + 2 < beta.Length; i++)
        {
            var difference = beta[i] - (2 * beta[i + 1]) + beta[i + 2];
            sum += difference * difference;
        }

        return sum;
    }

    private double[,] Information(double[] beta)
    {
        var information = new double[beta.Length, beta.Length];
        for (var i = 0; i < counts.Length; i++)
        {
            var (first, values) = rows[i];
            var weight = family.Slopes(counts[i], Link(beta, i)).Weight;
            for (var j = 0; j < 4; j++)
            {
                for (var k = 0; k < 4; k++) information[first + j, first + k] += weight * values[j] * values[k];
            }
        }

        return information;
    }

    private double[,]? Factor(double[] beta, double smoothing)
    {
        var matrix = Information(beta);
        for (var i = 0; i < beta.Length; i++)
        {
            for (var j = 0; j < beta.Length; j++) matrix[i, j] += smoothing * penalty[i, j];
        }

        return SymmetricMatrix.Factor(matrix, 1e-15, out _);
    }

    private SplineSolution Solution(double[] beta, double smoothing, double[,] factor)
    {
        var covariance = SymmetricMatrix.Inverse(factor);
        var information = Information(beta);
        double freedom = 0, deviance = 0;
        for (var i = 0; i < beta.Length; i++)
        {
            for (var j = Math.Max(0, i - 3); j <= Math.Min(beta.Length - 1, i + 3); j++) freedom += covariance[i, j] * information[j, i];
        }

        for (var i = 0; i < counts.Length; i++) deviance += family.Deviance(counts[i], Link(beta, i));
        var left = counts.Length - freedom;
        var restricted = saturated - (deviance / 2) - (0.5 * smoothing * Roughness(beta))
            + (0.5 * (penaltyLog + ((beta.Length - 2) * Math.Log(smoothing)) - LogDeterminant(factor))) + Math.Log(2 * Math.PI);
        return new SplineSolution(beta, covariance, smoothing, freedom, deviance, left > 1e-6 ? counts.Length * deviance / (left * left) : null, restricted);
    }

    private static double LogDeterminant(double[,] factor)
    {
        double log = 0;
        for (var i = 0; i < factor.GetLength(0); i++) log += 2 * Math.Log(factor[i, i]);
        return log;
    }
}
