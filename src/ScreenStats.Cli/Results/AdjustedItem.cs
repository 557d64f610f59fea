using System.Collections.Immutable;

namespace ScreenStats.Cli.Results;

/// <summary>P-values adjusted by one method, in the order given, and how many are at or below the level.</summary>
internal sealed record AdjustedItem(string Method, ImmutableArray<double> Values, int AtOrBelowLevel);
