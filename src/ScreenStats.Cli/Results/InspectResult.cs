using System.Collections.Immutable;
using System.Text.Json.Nodes;
using ScreenStats.Counting.Diagnostics;
using ScreenStats.Records;

namespace ScreenStats.Cli.Results;

/// <summary>What <c>inspect</c> answers.</summary>
internal sealed record InspectResult(
    string Title, bool Refused, ImmutableArray<ExportUnderstanding> Exports, ImmutableArray<LedgerItem> Ledger, ImmutableArray<Diagnostic> Diagnostics, JsonObject ProgramFile);
