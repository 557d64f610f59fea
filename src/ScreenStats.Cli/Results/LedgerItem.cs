namespace ScreenStats.Cli.Results;

/// <summary>Rows of one export that share one fate.</summary>
internal sealed record LedgerItem(string Export, string Entry, long Rows);
