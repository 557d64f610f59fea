namespace ScreenStats.Statistics.Trends.Smooths.Splines;

/// <summary>A spline fitted for one weight of the penalty.</summary>
internal sealed record SplineSolution(
    double[] Coefficients, double[,] Covariance, double Smoothing, double DegreesOfFreedom, double Deviance, double? CrossValidation, double RestrictedLogLikelihood);
