namespace ScreenStats.Statistics.Regression.Fitting;

/// <summary>The likelihood of rows of counts as a function of each row's linear predictor; the logarithm of each row is concave in it.</summary>
/// <param name="events">Events of each row, 0 or more, real numbers allowed.</param>
/// <param name="sizes">Trials or exposure of each row, above 0.</param>
/// <param name="offsets">What is added to the predictor of each row; null for nothing.</param>
internal abstract class RowModel(double[] events, double[] sizes, double[]? offsets)
{
    public double[] Events { get; } = events;

    public double[] Sizes { get; } = sizes;

    public int Rows => Events.Length;

    public double Predictor(int row, double[] x, double[] coefficients) => Design.Dot(x, coefficients) + (offsets is null ? 0 : offsets[row]);

    /// <summary>The logarithm of the likelihood of a row but for a constant; minus infinity where the predictor is not possible.</summary>
    public abstract double Log(int row, double eta);

    /// <summary>The slope of <see cref="Log"/>.</summary>
    public abstract double Slope(int row, double eta);

    /// <summary>Minus the second derivative of <see cref="Log"/>, as the search uses it.</summary>
    public abstract double Curvature(int row, double eta);

    /// <summary>The expected curvature: what the standard errors rest on.</summary>
    public abstract double Information(int row, double eta);

    /// <summary>The expected events.</summary>
    public abstract double Mean(int row, double eta);

    /// <summary>Whole logarithm of the likelihood, part of the deviance, and part of Pearson's statistic.</summary>
    public abstract (double Log, double Deviance, double Pearson) Fit(int row, double eta);

    public double LogSum(double[][] x, double[] coefficients)
    {
        double sum = 0;
        for (var i = 0; i < Rows; i++) sum += Log(i, Predictor(i, x[i], coefficients));
        return sum;
    }

    public (double Log, double Deviance, double Pearson) FitSum(double[][] x, double[] coefficients)
    {
        double log = 0, deviance = 0, pearson = 0;
        for (var i = 0; i < Rows; i++)
        {
            var part = Fit(i, Predictor(i, x[i], coefficients));
            (log, deviance, pearson) = (log + part.Log, deviance + part.Deviance, pearson + part.Pearson);
        }

        return (log, deviance, pearson);
    }

    /// <summary>The slope of each row at the coefficients: times its terms, its score.</summary>
    public double[] Slopes(double[][] x, double[] coefficients) => [.. Enumerable.Range(0, Rows).Select(i => Slope(i, Predictor(i, x[i], coefficients)))];

    /// <summary>The expected information of all rows, its lower triangle.</summary>
    public double[,] InformationSum(double[][] x, double[] coefficients)
    {
        var sum = new double[x[0].Length, x[0].Length];
        for (var i = 0; i < Rows; i++) Design.AddProduct(sum, x[i], Information(i, Predictor(i, x[i], coefficients)));
        return sum;
    }
}
