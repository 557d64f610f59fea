namespace ScreenStats.Statistics.LatentClass;

/// <summary>How far the counts lie from what the fitted model expects; not possible where the model has as many figures as the counts have freedom.</summary>
/// <param name="DegreesOfFreedom">Free counts minus figures estimated; 0 where the model is saturated.</param>
/// <param name="Deviance">Twice the sum of observed times ln(observed / expected); null where the model is saturated.</param>
/// <param name="PValue">The chance of at least that deviance if the model holds, by the chi-squared approximation; null where saturated.</param>
/// <param name="Reason">Why there is none; null where there is one.</param>
public sealed record GoodnessOfFit(int DegreesOfFreedom, double? Deviance, double? PValue, UndefinedReason? Reason);
