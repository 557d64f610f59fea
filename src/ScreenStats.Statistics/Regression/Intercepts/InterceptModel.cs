using ScreenStats.Statistics.Regression.Fitting;

namespace ScreenStats.Statistics.Regression.Intercepts;

/// <summary>The combinations of terms of a random-intercept logistic regression, each with a constant first.</summary>
internal sealed class InterceptModel
{
    public InterceptModel(BinomialRow[] merged)
    {
        X = Array.ConvertAll(merged, row => Design.Row(row, constant: true));
        Filled = Array.ConvertAll(X, Design.Filled);
    }

    public double[][] X { get; }

    /// <summary>The places of each combination that are not 0.</summary>
    public int[][] Filled { get; }

    /// <summary>Coefficients, the constant among them.</summary>
    public int Terms => X[0].Length;

    /// <summary>The part of the terms in the logit of each combination.</summary>
    public double[] Predictor(double[] theta)
    {
        var eta = new double[X.Length];
        for (var i = 0; i < X.Length; i++)
        {
            foreach (var j in Filled[i]) eta[i] += X[i][j] * theta[j];
        }

        return eta;
    }
}
