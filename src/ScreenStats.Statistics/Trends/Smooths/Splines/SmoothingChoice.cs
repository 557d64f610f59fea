namespace ScreenStats.Statistics.Trends.Smooths.Splines;

/// <summary>How the smoothing of a penalised spline is chosen.</summary>
public enum SmoothingChoice
{
    /// <summary>By the restricted likelihood in Laplace's approximation: the smooth is taken as drawn from a distribution whose spread is the most likely one.</summary>
    RestrictedLikelihood,

    /// <summary>By generalised cross-validation: n deviance / (n - effective degrees of freedom)².</summary>
    CrossValidation,

    /// <summary>It was given.</summary>
    Given,
}
