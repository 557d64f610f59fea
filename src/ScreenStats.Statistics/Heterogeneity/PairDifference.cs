using ScreenStats.Statistics.Comparison;

namespace ScreenStats.Statistics.Heterogeneity;

/// <summary>One of all pairs of groups: the difference with Newcombe's limits, and an exact p-value adjusted for the number of pairs.</summary>
/// <param name="First">The place of the first group in the list, from 0.</param>
/// <param name="Second">The place of the second group.</param>
/// <param name="Difference">Rate of the first minus rate of the second, with limits of the stated confidence for this pair alone.</param>
/// <param name="Simultaneous">The same with limits that hold for all pairs at once (Bonferroni: the error of one pair is that of all, divided by their number).</param>
/// <param name="PValue">Fisher's two-sided p-value.</param>
/// <param name="AdjustedPValue">Holm's adjustment of it over all pairs.</param>
public sealed record PairDifference(int First, int Second, ContrastEstimate Difference, ContrastEstimate Simultaneous, double PValue, double AdjustedPValue);
