using System.Collections.Immutable;

namespace ScreenStats.Cli.Results;

/// <summary>An odds ratio with its intervals; the conditional estimate belongs to the exact one.</summary>
internal sealed record OddsRatioItem(Figure Estimate, ImmutableArray<IntervalItem> Intervals, Figure ConditionalEstimate);
