using ScreenStats.Statistics.Numerics;

namespace ScreenStats.Statistics.Regression.Fitting;

/// <summary>The terms of rows as vectors, and what is done with them.</summary>
internal static class Design
{
    public static double[] Row(IReadOnlyList<double> terms, bool constant) => constant ? [1, .. terms] : [.. terms];

    public static double[] Row(BinomialRow row, bool constant) => constant ? [1, .. row.Values] : [.. row.Values];

    /// <summary>The places of a row that are not 0: with terms for levels a few of many.</summary>
    public static int[] Filled(double[] row) => [.. Enumerable.Range(0, row.Length).Where(j => row[j] != 0)];

    public static double Dot(double[] a, double[] b)
    {
        double sum = 0;
        for (var i = 0; i < a.Length; i++) sum += a[i] * b[i];
        return sum;
    }

    /// <summary>Adds weight x xᵀ to the lower triangle.</summary>
    public static void AddProduct(double[,] sum, double[] x, double weight) => AddProduct(sum, x, Filled(x), weight);

    /// <summary>The same with the places known that are not 0.</summary>
    public static void AddProduct(double[,] sum, double[] x, int[] filled, double weight)
    {
        foreach (var j in filled)
        {
            foreach (var k in filled)
            {
                if (k > j) break;
                sum[j, k] += x[j] * x[k] * weight;
            }
        }
    }

    public static double[,] Scaled(double[,] matrix, double factor)
    {
        var scaled = (double[,])matrix.Clone();
        for (var i = 0; i < scaled.GetLength(0); i++)
        {
            for (var j = 0; j < scaled.GetLength(1); j++) scaled[i, j] *= factor;
        }

        return scaled;
    }

    public static double[] Times(double[,] matrix, double[] vector)
    {
        var result = new double[matrix.GetLength(0)];
        for (var j = 0; j < result.Length; j++)
        {
            for (var k = 0; k < vector.Length; k++) result[j] += matrix[j, k] * vector[k];
        }

        return result;
    }

    public static IReadOnlyList<IReadOnlyList<double>> Nested(double[,] matrix) =>
        [.. Enumerable.Range(0, matrix.GetLength(0)).Select(i => (IReadOnlyList<double>)[.. Enumerable.Range(0, matrix.GetLength(1)).Select(j => matrix[i, j])])];

    public static double[] StandardErrors(double[,] covariance) =>
        [.. Enumerable.Range(0, covariance.GetLength(0)).Select(j => Math.Sqrt(Math.Max(0, covariance[j, j])))];

    /// <summary>Whether a term is a sum of others, judged on terms of the same length.</summary>
    public static bool Collinear(double[][] x)
    {
        var terms = x[0].Length;
        var products = new double[terms, terms];
        foreach (var row in x) AddProduct(products, row, 1);
        for (var j = 0; j < terms; j++)
        {
            if (products[j, j] == 0) return true;
        }

        var length = Enumerable.Range(0, terms).Select(j => Math.Sqrt(products[j, j])).ToArray();
        for (var j = 0; j < terms; j++)
        {
            for (var k = 0; k <= j; k++) products[j, k] /= length[j] * length[k];
        }

        return SymmetricMatrix.Factor(products, 1e-11, out _) is null;
    }

    /// <summary>Bread, the products of the groups' scores, bread.</summary>
    /// <param name="x">The terms of each row.</param>
    /// <param name="slopes">The slope of each row's likelihood in its predictor.</param>
    /// <param name="groups">The group of each row.</param>
    /// <param name="bread">The inverse of the information.</param>
    public static double[,] Sandwich(double[][] x, double[] slopes, int[] groups, double[,] bread)
    {
        var terms = x[0].Length;
        var scores = new SortedDictionary<int, double[]>();
        for (var i = 0; i < x.Length; i++)
        {
            if (!scores.TryGetValue(groups[i], out var score)) scores[groups[i]] = score = new double[terms];
            for (var j = 0; j < terms; j++) score[j] += x[i][j] * slopes[i];
        }

        // Bread times each group's score, then their products.
        var robust = new double[terms, terms];
        foreach (var score in scores.Values)
        {
            var influence = Times(bread, score);
            for (var j = 0; j < terms; j++)
            {
                for (var k = 0; k < terms; k++) robust[j, k] += influence[j] * influence[k];
            }
        }

        return robust;
    }
}
