using System.Collections.Immutable;

namespace ScreenStats.Cli.Results;

/// <summary>A difference or ratio with its intervals.</summary>
internal sealed record ContrastItem(Figure Estimate, ImmutableArray<IntervalItem> Intervals);
