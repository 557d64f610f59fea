using System.Collections.Immutable;
using ScreenStats.Counting.Diagnostics;
using ScreenStats.Records;

namespace ScreenStats.Cli.Results;

/// <summary>What <c>inspect</c> answers.</summary>
internal sealed record InspectResult(
    string Title, ImmutableArray<ExportUnderstanding> Exports, ImmutableArray<LedgerItem> Ledger, ImmutableArray<Diagnostic> Diagnostics);
