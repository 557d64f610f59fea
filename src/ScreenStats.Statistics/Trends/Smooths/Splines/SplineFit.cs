namespace ScreenStats.Statistics.Trends.Smooths.Splines;

/// <summary>A penalised spline through counts, or the reason why there is none.</summary>
/// <param name="Points">The points given, in order of time; empty with a <see cref="Reason"/>.</param>
/// <param name="Counts">Points with trials.</param>
/// <param name="Coefficients">The coefficients of the basis; empty with a reason.</param>
/// <param name="Smoothing">The weight of the penalty; null with a reason.</param>
/// <param name="Choice">How it was chosen.</param>
/// <param name="IsStraight">Whether no wiggle at all is as good as any, so that the smooth is a straight line on the scale of the link.</param>
/// <param name="DegreesOfFreedom">The effective degrees of freedom; null with a reason.</param>
/// <param name="Deviance">The deviance; null with a reason.</param>
/// <param name="Criterion">Deviance plus twice the effective degrees of freedom; null with a reason.</param>
/// <param name="CrossValidation">The score of generalised cross-validation; null with a reason or where no freedom is left.</param>
/// <param name="RestrictedLogLikelihood">The logarithm of the restricted likelihood in Laplace's approximation; null with a reason.</param>
/// <param name="Confidence">The confidence of the band.</param>
/// <param name="Reason">Why there is no spline; null where there is one.</param>
public sealed record SplineFit(
    IReadOnlyList<SplineRate> Points, int Counts, IReadOnlyList<double> Coefficients, double? Smoothing, SmoothingChoice Choice, bool IsStraight, double? DegreesOfFreedom, double? Deviance,
    double? Criterion, double? CrossValidation, double? RestrictedLogLikelihood, double Confidence, UndefinedReason? Reason)
{
    /// <summary>The method in words.</summary>
    public string Method => Choice switch
    {
        SmoothingChoice.RestrictedLikelihood => "penalised spline, restricted likelihood",
        SmoothingChoice.CrossValidation => "penalised spline, cross-validation",
        _ => "penalised spline, smoothing given",
    };
}
