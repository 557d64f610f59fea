namespace ScreenStats.Statistics.Accuracy;

/// <summary>Both predictive values at one prevalence.</summary>
/// <param name="Prevalence">The prevalence, in [0, 1].</param>
/// <param name="Positive">The positive predictive value.</param>
/// <param name="Negative">The negative predictive value.</param>
public sealed record PredictivePoint(double Prevalence, Estimate Positive, Estimate Negative);
