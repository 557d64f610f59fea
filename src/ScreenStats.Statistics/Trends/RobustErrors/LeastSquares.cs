using ScreenStats.Statistics.Regression.Fitting;

namespace ScreenStats.Statistics.Trends.RobustErrors;

/// <summary>Ordinary least squares.</summary>
public static class LeastSquares
{
    /// <summary>The coefficients with the least sum of squared residuals.</summary>
    /// <param name="values">The value of each row, finite.</param>
    /// <param name="terms">The terms of each row, finite, without the constant; as many in each row.</param>
    /// <param name="constant">Whether the model has a constant, as its first coefficient.</param>
    /// <returns>The fit; a reason where there are no more rows than coefficients, or terms cannot be told apart.</returns>
    /// <exception cref="ArgumentNullException">No list.</exception>
    /// <exception cref="ArgumentException">Lists of different lengths.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A figure that is not finite.</exception>
    /// <remarks>By orthogonalisation done twice, so that terms of very different size lose no digits. Source: Golub GH, Van Loan CF, Matrix Computations, 1996, chapter 5 (from memory).</remarks>
    public static LeastSquaresFit Fit(IReadOnlyList<double> values, IReadOnlyList<IReadOnlyList<double>> terms, bool constant = true)
    {
        var (x, reason) = Checked(values, terms, constant);
        if (reason is { } why) return new LeastSquaresFit(values.Count, [], [], [], null, why);
        var (coefficients, bread) = Solve(x, values)!.Value;
        double[] residuals = [.. values.Select((y, i) => y - Design.Dot(x[i], coefficients))];
        var variance = residuals.Sum(residual => residual * residual) / (values.Count - coefficients.Length);
        return new LeastSquaresFit(values.Count, coefficients, Design.StandardErrors(Design.Scaled(bread, variance)), residuals, variance, null);
    }

    /// <summary>The terms as vectors, and why they cannot be fitted.</summary>
    internal static (double[][] X, UndefinedReason? Reason) Checked(IReadOnlyList<double> values, IReadOnlyList<IReadOnlyList<double>> terms, bool constant)
    {
        ArgumentNullException.ThrowIfNull(values);
        ArgumentNullException.ThrowIfNull(terms);
        if (values.Count != terms.Count || terms.Any(row => row.Count != terms[0].Count)) throw new ArgumentException("Each value needs its terms, as many in each row.", nameof(terms));
        foreach (var value in values) Guard.Finite(value, nameof(values));
        foreach (var term in terms.SelectMany(row => row)) Guard.Finite(term, nameof(terms));
        double[][] x = [.. terms.Select(row => Design.Row(row, constant))];
        if (x.Length == 0 || x[0].Length == 0) return (x, UndefinedReason.NoValues);
        if (x.Length <= x[0].Length) return (x, UndefinedReason.NoDegreesOfFreedom);
        return (x, Solve(x, values) is null ? UndefinedReason.CollinearTerms : null);
    }

    /// <summary>The coefficients and the inverse of X'X; null where a column is a sum of others.</summary>
    internal static (double[] Coefficients, double[,] Bread)? Solve(double[][] x, IReadOnlyList<double> values)
    {
        var terms = x[0].Length;
        var columns = Enumerable.Range(0, terms + 1).Select(j => Enumerable.Range(0, x.Length).Select(i => j < terms ? x[i][j] : values[i]).ToArray()).ToArray();
        var upper = new double[terms, terms + 1];
        for (var j = 0; j <= terms; j++)
        {
            var length = Math.Sqrt(Design.Dot(columns[j], columns[j]));
            for (var pass = 0; pass < 2; pass++)
            {
                for (var k = 0; k < Math.Min(j, terms); k++)
                {
                    var share = Design.Dot(columns[k], columns[j]);
                    upper[k, j] += share;
                    for (var i = 0; i < x.Length; i++) columns[j][i] -= share * columns[k][i];
                }
            }

            if (j == terms) break;
            var left = Math.Sqrt(Design.Dot(columns[j], columns[j]));
            if (!(left > 1e-11 * length)) return null;
            upper[j, j] = left;
            for (var i = 0; i < x.Length; i++) columns[j][i] /= left;
        }

        // The inverse of the triangle gives coefficients and bread.
        var inverse = new double[terms, terms];
        for (var j = 0; j < terms; j++)
        {
            inverse[j, j] = 1 / upper[j, j];
            for (var i = j - 1; i >= 0; i--)
            {
                double sum = 0;
                for (var k = i + 1; k <= j; k++) sum += upper[i, k] * inverse[k, j];
                inverse[i, j] = -sum / upper[i, i];
            }
        }

        var coefficients = new double[terms];
        var bread = new double[terms, terms];
        for (var i = 0; i < terms; i++)
        {
            for (var j = i; j < terms; j++) coefficients[i] += inverse[i, j] * upper[j, terms];
            for (var j = 0; j < terms; j++)
            {
                for (var k = Math.Max(i, j); k < terms; k++) bread[i, j] += inverse[i, k] * inverse[j, k];
            }
        }

        return (coefficients, bread);
    }
}
