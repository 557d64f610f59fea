using ScreenStats.Evaluation.Changes.Rows;

namespace ScreenStats.Evaluation.Changes.Snapshots;

/// <summary>A figure of the whole program that is no share of counts.</summary>
/// <param name="Measure">What it is.</param>
/// <param name="Estimate">The figure; null where undefined or hidden.</param>
/// <param name="Undefined">Why it is undefined; null where it is not.</param>
/// <param name="Lower">Lower limit; null where there is none.</param>
/// <param name="Upper">Upper limit; null where there is none.</param>
/// <param name="Confidence">Confidence of the limits; null where there are none.</param>
public sealed record SnapshotFigure(ChangeMeasure Measure, double? Estimate, string? Undefined, double? Lower, double? Upper, double? Confidence);
