using System.Collections.Immutable;
using ScreenStats.Counting.Ledger;

namespace ScreenStats.Records;

/// <summary>How one export was understood.</summary>
/// <param name="Export">The export.</param>
/// <param name="Files">Its files, in the order in which they were read.</param>
/// <param name="Columns">Its canonical columns, in the contract's order.</param>
public sealed record ExportUnderstanding(
    ExportKind Export, ImmutableArray<FileUnderstanding> Files, ImmutableArray<ColumnUnderstanding> Columns);
