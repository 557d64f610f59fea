namespace ScreenStats.Statistics.Shrinkage;

/// <summary>How the true ratios of observed to expected are spread over groups: a gamma distribution, or the reason why there is none.</summary>
/// <param name="Groups">Groups of which events are expected.</param>
/// <param name="Observed">Events of all groups.</param>
/// <param name="Expected">Events expected of all groups.</param>
/// <param name="Shape">The shape of the distribution; null with a <see cref="Reason"/>.</param>
/// <param name="Rate">Its rate, shape over mean; null with a reason.</param>
/// <param name="Mean">Its mean; of groups that are all alike the ratio of all; null with another reason.</param>
/// <param name="LogLikelihood">The logarithm of the likelihood, factorials included; of groups that are all alike Poisson's; null with another reason.</param>
/// <param name="Reason">Why there is no distribution; null where there is one.</param>
public sealed record GammaPoissonFit(
    int Groups, long Observed, double Expected, double? Shape, double? Rate, double? Mean, double? LogLikelihood, UndefinedReason? Reason);
