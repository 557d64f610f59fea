namespace ScreenStats.Statistics.Trends.SlopeChanges;

/// <summary>One permutation test of the number of changes.</summary>
/// <param name="Fewer">The changes that the hypothesis allows.</param>
/// <param name="More">The changes of the alternative.</param>
/// <param name="Statistic">How much more of the weighted squares the alternative explains, over what it leaves.</param>
/// <param name="PValue">(1 + permutations at least as large) / (1 + permutations); those at least as large over those drawn where it stopped early.</param>
/// <param name="Level">The level it was held against: the significance over <see cref="More"/>'s largest less <see cref="Fewer"/>.</param>
/// <param name="Rejected">Whether fewer changes do not do.</param>
public sealed record ChangeNumberTest(int Fewer, int More, double Statistic, double PValue, double Level, bool Rejected);
