namespace ScreenStats.Statistics.Regression.Intercepts;

/// <summary>The logarithm of the marginal likelihood, its slopes and its information over the coefficients and, last, ln σ, as they are summed over groups.</summary>
internal sealed class InterceptSums(InterceptModel model)
{
    public InterceptModel Model { get; } = model;

    public double Log { get; set; }

    public double[] Slopes { get; } = new double[model.Terms + 1];

    /// <summary>The lower triangle, row by row.</summary>
    public double[][] Information { get; } = [.. Enumerable.Range(1, model.Terms + 1).Select(length => new double[length])];

    /// <summary>Adds a weight times x xᵀ to the coefficients' part, and another times x to that of ln σ.</summary>
    public void AddRow(int kind, double weight, double leaning)
    {
        var (x, filled) = (Model.X[kind], Model.Filled[kind]);
        var last = Information[^1];
        for (var a = 0; a < filled.Length; a++)
        {
            var j = filled[a];
            var row = Information[j];
            var part = weight * x[j];
            for (var b = 0; b <= a; b++) row[filled[b]] += part * x[filled[b]];
            last[j] += leaning * x[j];
        }
    }

    /// <summary>Adds a weight times v vᵀ.</summary>
    public void AddProduct(double weight, double[] v)
    {
        for (var j = 0; j < v.Length; j++)
        {
            var part = weight * v[j];
            if (part == 0) continue;
            var row = Information[j];
            for (var k = 0; k < row.Length; k++) row[k] += part * v[k];
        }
    }

    /// <summary>The information as a matrix.</summary>
    public double[,] Matrix()
    {
        var matrix = new double[Slopes.Length, Slopes.Length];
        for (var j = 0; j < Slopes.Length; j++)
        {
            for (var k = 0; k <= j; k++) matrix[j, k] = matrix[k, j] = Information[j][k];
        }

        return matrix;
    }
}
