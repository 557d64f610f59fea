namespace ScreenStats.Evaluation.Comparisons.Rows;

/// <summary>The place of a level among all by its adjusted rate, 1 being the highest.</summary>
/// <param name="Place">Its place by the mean of its rank.</param>
/// <param name="Lower">The smallest rank of the interval.</param>
/// <param name="Upper">The largest rank of the interval.</param>
/// <param name="ProbabilityHighest">The probability that its rate is the highest of all, in [0, 1].</param>
public sealed record ComparisonRank(int Place, int Lower, int Upper, double ProbabilityHighest);
