namespace ScreenStats.Evaluation.Yield;

/// <summary>How much screening was done for each thing found: the reciprocal of a proportion, with reciprocal limits.</summary>
/// <param name="Measure">What for what.</param>
/// <param name="Done">What was done: runs, valid tests or people tested.</param>
/// <param name="Found">What was found: cases, confirmed or refuted runs.</param>
/// <param name="Estimate">Done for each found; null where nothing was found.</param>
/// <param name="EstimateUndefined">Why there is no figure; null where there is one.</param>
/// <param name="Lower">Lower limit; given even where nothing was found ("at least so many").</param>
/// <param name="Upper">Upper limit; null where nothing was found.</param>
/// <param name="WidenedLower">Lower limit widened for clusters; null where not widened.</param>
/// <param name="WidenedUpper">Upper limit widened for clusters; null where not widened or nothing was found.</param>
/// <param name="Method">Method of the proportion's limits.</param>
/// <param name="Confidence">Confidence of the limits.</param>
public sealed record YieldFinding(
    YieldMeasure Measure, long Done, long Found, double? Estimate, string? EstimateUndefined,
    double? Lower, double? Upper, double? WidenedLower, double? WidenedUpper, string? Method, double Confidence)
{
    /// <summary>Number of sites where it is 2 to 4: too few to show how sites differ, so that is not in the widened limits; else null.</summary>
    public long? FewSites { get; init; }
}
