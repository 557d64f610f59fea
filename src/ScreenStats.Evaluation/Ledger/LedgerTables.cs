using System.Collections.Immutable;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Ledger;

internal static class LedgerTables
{
    public static Table<LedgerRow> Ledger(ImmutableArray<LedgerRow> rows) => new(
        "ledger",
        "Ledger",
        "What became of every row of every export. Each row is exactly one entry, the first that applies; \"read\" is their sum.",
        [
            new("export", "Export", Unit.Text, "Which export.", row => Cell.Text(row.Export)),
            new("entry", "Entry", Unit.Text, "What became of the rows; \"read\" for their sum.", row => Cell.Text(row.Entry)),
            new("rows", "Rows", Unit.Count, "Number of rows.", row => Cell.Count(row.Rows)),
        ],
        rows);
}
