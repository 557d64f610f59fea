using ScreenStats.Evaluation.Disclosure.Counts;
using static ScreenStats.Evaluation.Disclosure.Rules.RuleColumns;

namespace ScreenStats.Evaluation.Disclosure.Rules;

/// <summary>Tables of rows of the exports.</summary>
internal static class RecordRules
{
    public static IEnumerable<TableRule> All()
    {
        yield return new("ledger", Every, row => new CountUnit("ledger", row["export"], ""), row => Together(Names(ColumnRule.Free, "export", "entry"), Columns(("rows", row["entry"]))));
        yield return new("completeness", Every, row => new CountUnit("column", $"{row["export"]}:{row["column"]}", ""), row =>
        {
            var rows = new Measure(new CountUnit("ledger", row["export"], ""), "read");
            return Together(
                Names(ColumnRule.Free, "export", "column", "mapped"),
                [("rows", ColumnRule.Count(rows)), ("recorded", ColumnRule.Count("recorded")), ("not_recorded", ColumnRule.Count("not-recorded")), ("not_recorded_share", ColumnRule.Drawn(rows, "not-recorded"))]);
        });
    }
}
