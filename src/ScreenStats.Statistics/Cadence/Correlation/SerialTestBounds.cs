using System.Collections.Immutable;

namespace ScreenStats.Statistics.Cadence.Correlation;

/// <summary>The correlation under every assumption on leavers and on recovery.</summary>
/// <param name="Fits">The fits: by recovery, then by leavers.</param>
/// <param name="Estimates">The lowest and the highest estimate of the correlation; null where it is undefined.</param>
/// <param name="Limits">The lowest lower and the highest upper limit; null where undefined.</param>
public sealed record SerialTestBounds(ImmutableArray<SerialTestEstimate> Fits, Interval? Estimates, Interval? Limits);
