namespace ScreenStats.Statistics.Stratified;

/// <summary>Whether a rate rises or falls with a score.</summary>
/// <param name="Groups">Groups with trials.</param>
/// <param name="Score">The normal score with the binomial variance (divisor N), positive where the rate rises with the score; null with a <see cref="Reason"/>.</param>
/// <param name="Statistic">Its square, chi-square with one degree of freedom; null with a reason.</param>
/// <param name="PValue">The two-sided p-value of it; null with a reason.</param>
/// <param name="ConditionalStatistic">The same given both margins (divisor N - 1, Mantel's), (N - 1) r²; null with a reason.</param>
/// <param name="ConditionalPValue">Its p-value; null with a reason.</param>
/// <param name="Departure">Pearson's statistic less <see cref="Statistic"/>: what a straight line leaves; null with a reason.</param>
/// <param name="DepartureDegreesOfFreedom">Groups less two; null with a reason.</param>
/// <param name="DeparturePValue">Its p-value; null with a reason or with two groups.</param>
/// <param name="Reason">Why nothing can be told; null where it can.</param>
public sealed record TrendResult(
    int Groups, double? Score, double? Statistic, double? PValue, double? ConditionalStatistic, double? ConditionalPValue, double? Departure, int? DepartureDegreesOfFreedom,
    double? DeparturePValue, UndefinedReason? Reason);
