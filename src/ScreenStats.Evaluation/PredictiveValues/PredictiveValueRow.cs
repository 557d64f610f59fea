using ScreenStats.Statistics.Clusters;

namespace ScreenStats.Evaluation.PredictiveValues;

/// <summary>One row of the table of predictive values: observed or expected.</summary>
/// <param name="By">How the program is divided: <c>program</c>, <c>site</c>, <c>lot</c> or <c>device</c>.</param>
/// <param name="Level">The part; empty for the whole program.</param>
/// <param name="Basis">What it stands on.</param>
/// <param name="Measure">Which predictive value.</param>
/// <param name="Estimate">The value; null where undefined.</param>
/// <param name="EstimateUndefined">Why there is none.</param>
/// <param name="Lower">Lower limit.</param>
/// <param name="Upper">Upper limit.</param>
/// <param name="Method">Method of the limits.</param>
/// <param name="Confidence">Confidence of the limits.</param>
/// <param name="Prevalence">The prevalence it was computed at; null for observed values.</param>
/// <param name="PrevalenceSource">Where that prevalence comes from; empty for observed values.</param>
/// <param name="WidenedLower">Lower limit widened for clusters; null where not widened.</param>
/// <param name="WidenedUpper">Upper limit widened for clusters; null where not widened.</param>
/// <param name="DesignEffect">The design effect; null where not widened.</param>
/// <param name="Confirmed">Confirmed runs; null for expected values.</param>
/// <param name="Refuted">Refuted runs; null for expected values.</param>
/// <param name="WithoutConclusion">Positive runs without a conclusion; null for expected values.</param>
/// <param name="BoundLower">The value if every run without a conclusion were refuted.</param>
/// <param name="BoundUpper">The value if every run without a conclusion were confirmed.</param>
/// <param name="WithPrevalenceLower">Lower limit of an expected value with the prevalence's own uncertainty; null where it has none.</param>
/// <param name="WithPrevalenceUpper">Upper limit of an expected value with the prevalence's own uncertainty; null where it has none.</param>
public sealed record PredictiveValueRow(
    string By, string Level, PredictiveValueBasis Basis, PredictiveValueMeasure Measure,
    double? Estimate, string? EstimateUndefined, double? Lower, double? Upper, string? Method, double? Confidence,
    double? Prevalence, string PrevalenceSource, double? WidenedLower, double? WidenedUpper, double? DesignEffect,
    long? Confirmed, long? Refuted, long? WithoutConclusion, double? BoundLower, double? BoundUpper,
    double? WithPrevalenceLower, double? WithPrevalenceUpper);
