using ScreenStats.Counting.Ledger;

namespace ScreenStats.Counting.Cubes;

/// <summary>How much of a column is recorded.</summary>
/// <param name="Export">Which export.</param>
/// <param name="Column">Canonical column name, as in the exports' contract.</param>
/// <param name="Mapped">False where no heading was taken for this column.</param>
/// <param name="Rows">Rows read.</param>
/// <param name="Recorded">Rows with a usable value.</param>
public sealed record CompletenessCell(ExportKind Export, string Column, bool Mapped, long Rows, long Recorded);
