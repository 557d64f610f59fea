namespace ScreenStats.Evaluation.TruePrevalence;

/// <summary>A true prevalence by one method.</summary>
/// <param name="Method">The method.</param>
/// <param name="Estimate">The prevalence, in [0, 1]; null where undefined.</param>
/// <param name="EstimateUndefined">Why there is none; null where there is one.</param>
/// <param name="Lower">Lower limit as if all tests were independent.</param>
/// <param name="Upper">Upper limit as if all tests were independent.</param>
/// <param name="Confidence">Confidence of all limits.</param>
/// <param name="WidenedLower">Lower limit widened for clusters.</param>
/// <param name="WidenedUpper">Upper limit widened for clusters.</param>
/// <param name="Unclipped">The estimate before it is held within [0, 1]; null where the method has none.</param>
public sealed record PrevalenceEstimate(
    string Method, double? Estimate, string? EstimateUndefined, double? Lower, double? Upper, double Confidence,
    double? WidenedLower, double? WidenedUpper, double? Unclipped);
