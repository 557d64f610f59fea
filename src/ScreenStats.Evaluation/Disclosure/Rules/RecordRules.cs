using ScreenStats.Evaluation.Disclosure.Counts;
using static ScreenStats.Evaluation.Disclosure.Rules.RuleColumns;

namespace ScreenStats.Evaluation.Disclosure.Rules;

/// <summary>Tables of rows of the exports.</summary>
internal static class RecordRules
{
    public static IEnumerable<TableRule> All()
    {
        yield return new("ledger", Every, row => new CountUnit("ledger", row["export"], ""), row => IsOfSites(row)
            ? Together(Names(ColumnRule.Free, "export", "entry", "rows"))
            : Together(Names(ColumnRule.Free, "export", "entry"), Columns(("rows", row["entry"]))));
        yield return new("completeness", Every, row => new CountUnit("column", $"{row["export"]}:{row["column"]}", ""), row =>
        {
            if (IsOfSites(row)) return Together(Names(ColumnRule.Free, "export", "column", "mapped", "rows", "recorded", "not_recorded", "not_recorded_share"));
            var rows = new Measure(new CountUnit("ledger", row["export"], ""), "read");
            return Together(
                Names(ColumnRule.Free, "export", "column", "mapped"),
                [("rows", ColumnRule.Count(rows)), ("recorded", ColumnRule.Count("recorded")), ("not_recorded", ColumnRule.Count("not-recorded")), ("not_recorded_share", ColumnRule.Drawn(rows, "not-recorded"))]);
        });
    }

    // Rows of the export of sites are sites, not people or runs.
    private static bool IsOfSites(Tables.Row row) => row["export"] == "sites";
}
