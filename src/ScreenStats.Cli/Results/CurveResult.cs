namespace ScreenStats.Cli.Results;

/// <summary>Both predictive values at one prevalence.</summary>
internal sealed record CurveResult(double Prevalence, EstimateResult PositivePredictiveValue, EstimateResult NegativePredictiveValue);
