namespace ScreenStats.Statistics.Numerics;

/// <summary>Systems of equations with a symmetric positive definite matrix, by Cholesky's decomposition.</summary>
internal static class SymmetricMatrix
{
    /// <summary>The lower triangle L with L Lᵀ = matrix; null where the matrix is not positive definite, or so nearly not that a column is a sum of others.</summary>
    /// <param name="matrix">The matrix; its lower triangle is read.</param>
    /// <param name="least">The least part of a diagonal element that must be left once the columns before are taken out.</param>
    /// <param name="failed">The column at which it stopped.</param>
    public static double[,]? Factor(double[,] matrix, double least, out int failed)
    {
        var n = matrix.GetLength(0);
        var factor = new double[n, n];
        for (var j = 0; j < n; j++)
        {
            var pivot = matrix[j, j];
            for (var k = 0; k < j; k++) pivot -= factor[j, k] * factor[j, k];
            if (!(pivot > least * Math.Abs(matrix[j, j])) || !double.IsFinite(pivot))
            {
                failed = j;
                return null;
            }

            factor[j, j] = Math.Sqrt(pivot);
            for (var i = j + 1; i < n; i++)
            {
                var sum = matrix[i, j];
                for (var k = 0; k < j; k++) sum -= factor[i, k] * factor[j, k];
                factor[i, j] = sum / factor[j, j];
            }
        }

        failed = -1;
        return factor;
    }

    public static double[] Solve(double[,] factor, double[] right)
    {
        var n = right.Length;
        var x = (double[])right.Clone();
        for (var i = 0; i < n; i++)
        {
            for (var k = 0; k < i; k++) x[i] -= factor[i, k] * x[k];
            x[i] /= factor[i, i];
        }

        for (var i = n - 1; i >= 0; i--)
        {
            for (var k = i + 1; k < n; k++) x[i] -= factor[k, i] * x[k];
            x[i] /= factor[i, i];
        }

        return x;
    }

    public static double[,] Inverse(double[,] factor)
    {
        var n = factor.GetLength(0);
        var inverse = new double[n, n];
        for (var j = 0; j < n; j++)
        {
            var unit = new double[n];
            unit[j] = 1;
            var column = Solve(factor, unit);
            for (var i = 0; i < n; i++) inverse[i, j] = column[i];
        }

        for (var i = 0; i < n; i++)
        {
            for (var j = 0; j < i; j++) inverse[i, j] = inverse[j, i] = (inverse[i, j] + inverse[j, i]) / 2;
        }

        return inverse;
    }

    /// <summary>vᵀ M v.</summary>
    public static double Form(double[,] matrix, double[] v)
    {
        double sum = 0;
        for (var i = 0; i < v.Length; i++)
        {
            for (var j = 0; j < v.Length; j++) sum += v[i] * matrix[i, j] * v[j];
        }

        return sum;
    }
}
