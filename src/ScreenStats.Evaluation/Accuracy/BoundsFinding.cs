namespace ScreenStats.Evaluation.Accuracy;

/// <summary>The least and the greatest value that the counts allow with no assumption on the runs that were not verified.</summary>
/// <param name="Lower">The worst case; null where undefined.</param>
/// <param name="LowerUndefined">Why there is none; null where there is one.</param>
/// <param name="Upper">The best case; null where undefined.</param>
public sealed record BoundsFinding(double? Lower, string? LowerUndefined, double? Upper);
