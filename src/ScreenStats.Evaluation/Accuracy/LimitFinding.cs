namespace ScreenStats.Evaluation.Accuracy;

/// <summary>A one-sided limit: the figure is at least this.</summary>
/// <param name="Lower">The limit; null where it is undefined.</param>
/// <param name="LowerUndefined">Why there is none; null where there is one.</param>
/// <param name="Confidence">Confidence of the limit, one-sided, in (0, 1).</param>
public sealed record LimitFinding(double? Lower, string? LowerUndefined, double Confidence);
