namespace ScreenStats.Statistics.Trends.Weekdays;

/// <summary>Whether the days of the week differ, weeks held, and by how much.</summary>
/// <param name="Weekdays">The days with trials, Monday first.</param>
/// <param name="Weeks">Weeks that compare days: with trials on two days, an event and a trial without one.</param>
/// <param name="ConditionalWeeks">Those of them taken given their events; the others have a term.</param>
/// <param name="LikelihoodRatio">Twice the logarithm of the likelihood ratio of no difference; null with a reason.</param>
/// <param name="DegreesOfFreedom">Days less 1; null with a reason.</param>
/// <param name="ResidualDegrees">Days of those weeks less weeks less <paramref name="DegreesOfFreedom"/>; null with a reason.</param>
/// <param name="Dispersion">Pearson's statistic over the residual degrees; null with a reason or without such degrees.</param>
/// <param name="VarianceFactor">What variances were multiplied with; null with a reason.</param>
/// <param name="PValue">The chance of days that differ as much where they do not: chi-square, or F where the dispersion was estimated; null with a reason.</param>
/// <param name="Confidence">The confidence of the limits.</param>
/// <param name="Reason">Why there is no comparison; null where there is one.</param>
public sealed record WeekdayPattern(
    IReadOnlyList<WeekdayEffect> Weekdays, int Weeks, int ConditionalWeeks, double? LikelihoodRatio, int? DegreesOfFreedom, int? ResidualDegrees, double? Dispersion,
    double? VarianceFactor, double? PValue, double Confidence, UndefinedReason? Reason);
