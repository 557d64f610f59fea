using System.Collections.Immutable;

namespace ScreenStats.Cli.Results;

/// <summary>What <c>interval</c> answers.</summary>
internal sealed record IntervalResult(
    long Successes, long Trials, double Confidence, Figure Estimate, ImmutableArray<IntervalItem> Intervals);
