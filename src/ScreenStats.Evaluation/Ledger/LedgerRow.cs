namespace ScreenStats.Evaluation.Ledger;

/// <summary>One line of the ledger.</summary>
/// <param name="Key">Export and entry joined by a colon, such as <c>screening:counted</c>.</param>
/// <param name="Export">Which export.</param>
/// <param name="Entry">What became of the rows, or <c>read</c> for their sum.</param>
/// <param name="Rows">Number of rows.</param>
public sealed record LedgerRow(string Key, string Export, string Entry, long Rows);
