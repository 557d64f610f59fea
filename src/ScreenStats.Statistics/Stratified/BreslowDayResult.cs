namespace ScreenStats.Statistics.Stratified;

/// <summary>Whether the odds ratios of the strata differ.</summary>
/// <param name="Strata">Strata given.</param>
/// <param name="InformativeStrata">Strata with trials of both groups, an event and a trial without.</param>
/// <param name="OddsRatio">The common odds ratio that the strata are held against; null with a <see cref="Reason"/>.</param>
/// <param name="Statistic">Breslow and Day's statistic; null with a reason.</param>
/// <param name="PValue">Its p-value; null with a reason.</param>
/// <param name="CorrectedStatistic">The statistic with Tarone's correction; null with a reason.</param>
/// <param name="CorrectedPValue">Its p-value: the one to read; null with a reason.</param>
/// <param name="DegreesOfFreedom">Informative strata less one; null with a reason.</param>
/// <param name="Reason">Why nothing can be told; null where it can.</param>
public sealed record BreslowDayResult(
    int Strata, int InformativeStrata, double? OddsRatio, double? Statistic, double? PValue, double? CorrectedStatistic, double? CorrectedPValue, int? DegreesOfFreedom,
    UndefinedReason? Reason);
