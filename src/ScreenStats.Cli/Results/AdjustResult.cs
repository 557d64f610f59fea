using System.Collections.Immutable;

namespace ScreenStats.Cli.Results;

/// <summary>What <c>adjust</c> answers.</summary>
internal sealed record AdjustResult(ImmutableArray<double> PValues, double Level, ImmutableArray<AdjustedItem> Adjusted);
