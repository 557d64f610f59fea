using ScreenStats.Statistics.Trends.Series;

namespace ScreenStats.Statistics.Trends.Growth;

/// <summary>The growth of a series of counts.</summary>
/// <param name="Scale">What grows.</param>
/// <param name="Limits">What the limits allow for.</param>
/// <param name="Periods">Periods in which something was counted.</param>
/// <param name="From">The first of them; null where there is none.</param>
/// <param name="To">The last of them; null where there is none.</param>
/// <param name="EventTotal">Events in all of them.</param>
/// <param name="SizeTotal">Trials or exposure in all of them.</param>
/// <param name="Growth">The growth per unit of time: the change of the log odds or of the log rate.</param>
/// <param name="StandardError">Its standard error; null where there is none.</param>
/// <param name="PValue">The probability of a growth as far from 0 were there none (Wald; with profile likelihood the likelihood ratio); null where there is none.</param>
/// <param name="Change">The change of odds or rate per unit of time as a fraction: 0.22 is 22 % more.</param>
/// <param name="Turnover">The doubling or halving time.</param>
/// <param name="Direction">What the limits say.</param>
/// <param name="Line">The fitted line on the model's scale; null with a <see cref="Reason"/>.</param>
/// <param name="Deviance">The deviance; null with a reason.</param>
/// <param name="DegreesOfFreedom">Points less two; null with a reason.</param>
/// <param name="Dispersion">Pearson's statistic over its degrees of freedom; null with a reason or without degrees of freedom.</param>
/// <param name="Lag">With robust limits the farthest neighbours; else null.</param>
/// <param name="StudentDegrees">Degrees of freedom of Student's distribution where the limits use it; else null.</param>
/// <param name="Method">The method in words.</param>
/// <param name="Confidence">The confidence of the limits, in (0, 1).</param>
/// <param name="Reason">Why there is no growth; null where there is one.</param>
public sealed record GrowthEstimate(
    TrendScale Scale, TrendLimits Limits, int Periods, double? From, double? To, double EventTotal, double SizeTotal, OpenEstimate Growth, double? StandardError, double? PValue,
    OpenEstimate Change, TurnoverTime Turnover, TrendDirection Direction, FittedLine? Line, double? Deviance, int? DegreesOfFreedom, double? Dispersion, int? Lag, int? StudentDegrees,
    string Method, double Confidence, UndefinedReason? Reason);
