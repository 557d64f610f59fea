using ScreenStats.Evaluation;

namespace ScreenStats.Reporting.Pages.Ledger;

/// <summary>What became of every row.</summary>
internal static class LedgerPage
{
    /// <summary>The page.</summary>
    public static Page Of(Findings findings) => new(
        "ledger", "What became of every row", findings.Ledger,
        "A row that is missing from an export leaves no trace in it: the ledger adds up over what was read, not over what was done.",
        "Every row of an export is exactly one entry, the first that applies: set aside (a required field is missing or cannot be read), " +
        "duplicate, run of a control swab, kept out (symptoms, contact of a case), counted. Read is their sum. " +
        "Rows that were set aside and duplicates are listed by file and line in set-aside.csv, never with their text unless it was asked for.")
    {
        Tables = [new TableView(findings.Ledger.Tables[0], "Rows by export and entry", ["export", "entry", "rows"])],
    };
}
