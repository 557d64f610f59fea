namespace ScreenStats.Statistics.Regression.Ranks;

/// <summary>The place of one group among all, 1 being the highest rate.</summary>
/// <param name="Index">The place of the group in the list given, from 0.</param>
/// <param name="MeanRank">The mean of its rank.</param>
/// <param name="Lowest">The smallest rank of the interval.</param>
/// <param name="Highest">The largest rank of the interval.</param>
/// <param name="ChanceHighest">The probability that its rate is the highest of all.</param>
/// <param name="ChanceStandardError">The standard error of that probability from the number of draws.</param>
/// <param name="Confidence">The probability of the interval.</param>
public sealed record RankEstimate(int Index, double MeanRank, int Lowest, int Highest, double ChanceHighest, double ChanceStandardError, double Confidence);
