namespace ScreenStats.Counting.Ledger;

/// <summary>Rows of one export that share one fate.</summary>
/// <param name="Export">Which export.</param>
/// <param name="Entry">What became of them.</param>
/// <param name="Rows">Number of rows; zero is kept, so that the ledger always shows every entry.</param>
public sealed record LedgerCell(ExportKind Export, LedgerEntry Entry, long Rows);
