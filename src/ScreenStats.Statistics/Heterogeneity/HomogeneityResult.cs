namespace ScreenStats.Statistics.Heterogeneity;

/// <summary>Whether groups have one rate: chi-square over the table of groups by event and no event.</summary>
/// <param name="Groups">Groups with trials.</param>
/// <param name="Events">Events of all groups.</param>
/// <param name="Trials">Trials of all groups.</param>
/// <param name="Statistic">Pearson's statistic; null with a <see cref="Reason"/>.</param>
/// <param name="LikelihoodRatio">The likelihood-ratio statistic; null with a reason.</param>
/// <param name="DegreesOfFreedom">Groups less one; null with a reason.</param>
/// <param name="PValue">The chance of as large a Pearson statistic if all groups have one rate; null with a reason.</param>
/// <param name="LikelihoodRatioPValue">The same for the likelihood-ratio statistic.</param>
/// <param name="SmallestExpected">The smallest expected count of a cell: below 5, the exact test is the one to read.</param>
/// <param name="Reason">Why nothing can be told; null where it can.</param>
public sealed record HomogeneityResult(
    int Groups, long Events, long Trials, double? Statistic, double? LikelihoodRatio, int? DegreesOfFreedom, double? PValue, double? LikelihoodRatioPValue,
    double? SmallestExpected, UndefinedReason? Reason);
