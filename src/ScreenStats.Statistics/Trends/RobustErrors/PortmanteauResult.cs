namespace ScreenStats.Statistics.Trends.RobustErrors;

/// <summary>A test of whether residuals lean on earlier ones.</summary>
/// <param name="Statistic">The statistic; null with a <see cref="Reason"/>.</param>
/// <param name="DegreesOfFreedom">Lags less fitted coefficients; null with a reason.</param>
/// <param name="PValue">The probability of a statistic as large if residuals were independent; null with a reason.</param>
/// <param name="Reason">Why there is no test; null where there is one.</param>
public sealed record PortmanteauResult(double? Statistic, int? DegreesOfFreedom, double? PValue, UndefinedReason? Reason);
