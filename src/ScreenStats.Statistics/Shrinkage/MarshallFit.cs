namespace ScreenStats.Statistics.Shrinkage;

/// <summary>Ratios drawn to their mean by moments.</summary>
/// <param name="Groups">Groups of which events are expected.</param>
/// <param name="Mean">Observed over expected events of all groups; null with a <see cref="Reason"/>.</param>
/// <param name="Variance">The variance of the true ratios, 0 or more; null with a reason.</param>
/// <param name="Ratios">For each group, in the order given, its ratio drawn to the mean; the mean itself where nothing is expected; empty with a reason.</param>
/// <param name="Reason">Why there is nothing; null where there is.</param>
public sealed record MarshallFit(int Groups, double? Mean, double? Variance, IReadOnlyList<double> Ratios, UndefinedReason? Reason);
