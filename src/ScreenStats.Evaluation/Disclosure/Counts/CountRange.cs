namespace ScreenStats.Evaluation.Disclosure.Counts;

/// <summary>What a reader can work out of a hidden count.</summary>
/// <param name="Lower">The least it can be.</param>
/// <param name="Upper">The most it can be; null for no limit.</param>
internal readonly record struct CountRange(long Lower, long? Upper);
