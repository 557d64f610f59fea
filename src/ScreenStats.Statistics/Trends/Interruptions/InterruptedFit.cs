using ScreenStats.Statistics.Trends.RobustErrors;
using ScreenStats.Statistics.Trends.Series;

namespace ScreenStats.Statistics.Trends.Interruptions;

/// <summary>A series with dated changes.</summary>
/// <param name="Scale">What is modelled.</param>
/// <param name="Limits">What the limits allow for.</param>
/// <param name="Points">Points in which something was counted.</param>
/// <param name="Changes">What each change did, in order of time.</param>
/// <param name="Path">The series as fitted and without the changes, one for each time; empty with a <see cref="Reason"/>.</param>
/// <param name="Coefficients">The coefficients (see the terms), for checks; empty with a reason.</param>
/// <param name="StandardErrors">Their standard errors; empty with a reason, or where no degree of freedom is left for them.</param>
/// <param name="Terms">What each coefficient belongs to, in words.</param>
/// <param name="Deviance">The deviance; null with a reason.</param>
/// <param name="Akaike">Akaike's criterion; null with a reason.</param>
/// <param name="DegreesOfFreedom">Points less coefficients; null with a reason.</param>
/// <param name="Dispersion">Pearson's statistic over its degrees of freedom; null with a reason or without degrees of freedom.</param>
/// <param name="Residuals">Deviance residuals in order of time; empty with a reason.</param>
/// <param name="DurbinWatson">Durbin and Watson's statistic of the residuals; null where undefined.</param>
/// <param name="LjungBox">Ljung and Box's test of the residuals over the smaller of 12 lags and a fifth of the points (at least one); null with a reason.</param>
/// <param name="Lag">With robust limits the farthest neighbours; else null.</param>
/// <param name="Method">The method in words.</param>
/// <param name="Confidence">The confidence of the limits, in (0, 1).</param>
/// <param name="Reason">Why there is no fit; null where there is one.</param>
public sealed record InterruptedFit(
    TrendScale Scale, TrendLimits Limits, int Points, IReadOnlyList<InterruptionEstimate> Changes, IReadOnlyList<PathPoint> Path, IReadOnlyList<double> Coefficients,
    IReadOnlyList<double> StandardErrors, IReadOnlyList<string> Terms, double? Deviance, double? Akaike, int? DegreesOfFreedom, double? Dispersion, IReadOnlyList<double> Residuals,
    double? DurbinWatson, PortmanteauResult? LjungBox, int? Lag, string Method, double Confidence, UndefinedReason? Reason);
