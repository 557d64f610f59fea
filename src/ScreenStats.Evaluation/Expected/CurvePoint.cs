namespace ScreenStats.Evaluation.Expected;

/// <summary>Expected predictive values at one prevalence.</summary>
/// <param name="Prevalence">The prevalence, a fraction in (0, 1).</param>
/// <param name="Positive">Expected positive predictive value; null where no positive result can occur.</param>
/// <param name="PositiveLower">Its lower limit, equal to it where every input was taken as exact.</param>
/// <param name="PositiveUpper">Its upper limit.</param>
/// <param name="Negative">Expected negative predictive value; null where no negative result can occur.</param>
/// <param name="NegativeLower">Its lower limit.</param>
/// <param name="NegativeUpper">Its upper limit.</param>
public sealed record CurvePoint(
    double Prevalence, double? Positive, double? PositiveLower, double? PositiveUpper,
    double? Negative, double? NegativeLower, double? NegativeUpper);
