namespace ScreenStats.Statistics.Trends.Smooths;

/// <summary>A rate smoothed over periods, or the reason why it is not.</summary>
/// <param name="Points">The periods given, in order of time, one each; empty with a <see cref="Reason"/>.</param>
/// <param name="Periods">Periods with trials.</param>
/// <param name="Sigma">The standard deviation of the step of the logit from one period to the next; null with a reason.</param>
/// <param name="SigmaKind">Where sigma comes from.</param>
/// <param name="LogLikelihood">The natural logarithm of the likelihood at sigma, binomial coefficients included; with a diffuse start of a density of 1 at each logit; null with a reason.</param>
/// <param name="ConstantLogLikelihood">The same at a sigma of 0; null with a reason or where it was not needed.</param>
/// <param name="Confidence">The confidence of the bands.</param>
/// <param name="Reason">Why there is no smooth; null where there is one.</param>
public sealed record BinomialLevelFit(
    IReadOnlyList<BinomialLevelPoint> Points, int Periods, double? Sigma, SigmaKind SigmaKind, double? LogLikelihood, double? ConstantLogLikelihood, double Confidence, UndefinedReason? Reason)
{
    /// <summary>The method in words.</summary>
    public string Method => SigmaKind == SigmaKind.Averaged ? "binomial local level, averaged over sigma" : "binomial local level";
}
