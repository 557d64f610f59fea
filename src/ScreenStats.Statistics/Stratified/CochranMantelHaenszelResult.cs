namespace ScreenStats.Statistics.Stratified;

/// <summary>Whether two groups differ within strata.</summary>
/// <param name="Strata">Strata given.</param>
/// <param name="InformativeStrata">Strata with trials of both groups, an event and a trial without.</param>
/// <param name="Observed">Events of the first group in the informative strata.</param>
/// <param name="Expected">Events expected of it; null with a <see cref="Reason"/>.</param>
/// <param name="Statistic">Chi-square with one degree of freedom, without continuity correction; null with a reason.</param>
/// <param name="PValue">Its p-value; null with a reason.</param>
/// <param name="CorrectedStatistic">The same with continuity correction; null with a reason.</param>
/// <param name="CorrectedPValue">Its p-value; null with a reason.</param>
/// <param name="Reason">Why nothing can be told; null where it can.</param>
public sealed record CochranMantelHaenszelResult(
    int Strata, int InformativeStrata, long Observed, double? Expected, double? Statistic, double? PValue, double? CorrectedStatistic, double? CorrectedPValue,
    UndefinedReason? Reason);
