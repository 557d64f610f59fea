using ScreenStats.Evaluation.Changes.Rows;

namespace ScreenStats.Evaluation.Changes.Snapshots;

/// <summary>A share by its counts.</summary>
/// <param name="By">Of what part of the program.</param>
/// <param name="Level">The part; empty for the whole program.</param>
/// <param name="Measure">What is counted.</param>
/// <param name="Events">Events; null where hidden.</param>
/// <param name="Trials">Trials; null where hidden.</param>
/// <param name="DesignEffect">By how much clusters raise the variance, at least 1; null where it is not known.</param>
/// <param name="Clusters">Clusters that it was computed from; null where it could not be.</param>
public sealed record SnapshotShare(Grouping By, string Level, ChangeMeasure Measure, long? Events, long? Trials, double? DesignEffect, long? Clusters);
