using System.Collections.Immutable;
using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Diagnostics;
using ScreenStats.Counting.Ledger;
using ScreenStats.Records.PersonLog;

namespace ScreenStats.Records;

/// <summary>What counting the views of a database gave.</summary>
/// <param name="Counted">What was counted.</param>
/// <param name="ScreeningName">What messages call the screening view.</param>
/// <param name="ConfirmatoryName">What they call the confirmatory one; empty without it.</param>
internal sealed record ViewsRead(CountedExports Counted, string ScreeningName, string ConfirmatoryName)
{
    /// <summary>What was found in rows, beside what counting found.</summary>
    public ImmutableArray<Diagnostic> Found { get; init; } = [];

    /// <summary>Rows set aside and duplicates, the screening view's first.</summary>
    public ImmutableArray<SetAsideRow> SetAside { get; init; } = [];

    /// <summary>How much of each column is recorded.</summary>
    public ImmutableArray<CompletenessCell> Completeness { get; init; } = [];

    /// <summary>Rows set aside, for the ledger.</summary>
    public ImmutableArray<LedgerCell> Ledger { get; init; } = [];
}
