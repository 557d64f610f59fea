using ScreenStats.Statistics.Regression.Fitting;

namespace ScreenStats.Statistics.Trends.RobustErrors;

/// <summary>The sandwich whose filling takes in products of scores of neighbouring periods, by Bartlett's weights.</summary>
internal static class HacCovariance
{
    /// <param name="x">The terms of each row.</param>
    /// <param name="slopes">What each row's score is, times its terms.</param>
    /// <param name="periods">The period of each row; scores of one period are added up.</param>
    /// <param name="count">How many periods there are; one without a row has a score of 0.</param>
    /// <param name="bread">The inverse of the information.</param>
    /// <param name="lag">The farthest neighbours.</param>
    public static double[,] Of(double[][] x, double[] slopes, int[] periods, int count, double[,] bread, int lag)
    {
        var terms = bread.GetLength(0);
        var scores = Enumerable.Range(0, count).Select(_ => new double[terms]).ToArray();
        for (var i = 0; i < x.Length; i++)
        {
            for (var j = 0; j < terms; j++) scores[periods[i]][j] += x[i][j] * slopes[i];
        }

        // Bread times each score first: the sum of products is then the covariance itself.
        var influences = Array.ConvertAll(scores, score => Design.Times(bread, score));
        var sum = new double[terms, terms];
        for (var apart = 0; apart <= Math.Min(lag, count - 1); apart++)
        {
            var weight = 1 - (apart / (lag + 1.0));
            for (var t = apart; t < count; t++)
            {
                var (a, b) = (influences[t], influences[t - apart]);
                for (var j = 0; j < terms; j++)
                {
                    for (var k = 0; k < terms; k++) sum[j, k] += weight * (apart == 0 ? a[j] * b[k] : (a[j] * b[k]) + (b[j] * a[k]));
                }
            }
        }

        return sum;
    }
}
