using System.Collections.Immutable;

namespace ScreenStats.Counting.Programs;

/// <summary>How negative runs were drawn for audit.</summary>
public sealed record AuditSettings
{
    /// <summary>The sampling strata; empty: not described.</summary>
    public ImmutableArray<StratumSettings> Strata { get; init; } = [];
}
