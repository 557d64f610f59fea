namespace ScreenStats.Statistics.Standardisation;

/// <summary>Events observed at a site over those expected if each of its strata had the reference's rate.</summary>
/// <param name="Observed">Events observed.</param>
/// <param name="Expected">Events expected; null where a stratum has no reference.</param>
/// <param name="Ratio">Observed over expected, with limits; undefined with its reason.</param>
/// <param name="Rate">The ratio times the reference's crude rate, with limits; undefined with its reason.</param>
public sealed record IndirectRatio(long Observed, double? Expected, Estimate Ratio, Estimate Rate);
