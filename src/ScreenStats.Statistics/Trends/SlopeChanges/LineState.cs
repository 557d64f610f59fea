using ScreenStats.Statistics.Numerics;

namespace ScreenStats.Statistics.Trends.SlopeChanges;

/// <summary>A fitted broken line on its inner scale of time, u = (time - centre) / unit.</summary>
/// <param name="Centre">The inner 0.</param>
/// <param name="Unit">The inner 1.</param>
/// <param name="Coefficients">Constant, slope, differences of slope.</param>
/// <param name="Knots">The places of the changes.</param>
/// <param name="Covariance">Of coefficients, then of differences times moves of the places; dispersion included.</param>
/// <param name="Quantile">The critical value of the limits.</param>
internal sealed record LineState(double Centre, double Unit, double[] Coefficients, double[] Knots, double[,] Covariance, double Quantile)
{
    public double Logit(double time)
    {
        var u = (time - Centre) / Unit;
        var logit = Coefficients[0] + (Coefficients[1] * u);
        for (var k = 0; k < Knots.Length; k++) logit += Coefficients[2 + k] * Math.Max(0, u - Knots[k]);
        return logit;
    }

    /// <summary>The derivative of the logit by coefficients and moves; on a change the mean of both sides.</summary>
    public double[] Gradient(double time)
    {
        var u = (time - Centre) / Unit;
        var count = Knots.Length;
        var gradient = new double[2 + (2 * count)];
        (gradient[0], gradient[1]) = (1, u);
        for (var k = 0; k < count; k++)
        {
            gradient[2 + k] = Math.Max(0, u - Knots[k]);
            gradient[2 + count + k] = u > Knots[k] ? -1 : u == Knots[k] ? -0.5 : 0;
        }

        return gradient;
    }

    public double Error(double[] gradient) => Math.Sqrt(Math.Max(0, SymmetricMatrix.Form(Covariance, gradient)));
}
