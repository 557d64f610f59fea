using ScreenStats.Evaluation.Disclosure.Counts;
using ScreenStats.Evaluation.Flow;
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
        yield return new("flow", Every, row => Box(row["box"]).Unit, row =>
        {
            Measure own = Box(row["box"]).Measure;
            // Where something begins, there is no share: its columns are empty.
            var before = row["from"].Length == 0 ? own : Of(Box(row["from"]));
            return Together(Flow, [("count", ColumnRule.Count(own)), ("from_count", ColumnRule.Count(before))], Names(ColumnRule.Drawn(before, own), "share"), Share(before, own));
        }) { Optional = true };
    }

    private static IEnumerable<(string Name, ColumnRule Rule)> Flow => Names(ColumnRule.Free, "box", "stage", "outcome", "from");

    private static Measure Of((CountUnit Unit, string Measure) count) => new(count.Unit, count.Measure);

    /// <summary>The count that a box of the flow is. Boxes that stand in other tables under another name are the same count.</summary>
    private static (CountUnit Unit, string Measure) Box(string key)
    {
        var (of, outcome) = (FlowKeys.Parent(key), FlowKeys.Outcome(key));
        if (key == FlowKeys.Specimens) return (CountUnit.Program, "s.all");
        if (key is FlowKeys.Settling or FlowKeys.NotLinked) return (CountUnit.Program, key == FlowKeys.Settling ? "s.settling" : "s.unlinked");
        if (key == FlowKeys.Runs) return (CountUnit.Program, "runs");
        if (of is FlowKeys.Rows or FlowKeys.SpecimenRows or "") return (new CountUnit("ledger", key.StartsWith(FlowKeys.SpecimenRows, StringComparison.Ordinal) ? "confirmatory" : "screening", ""), of.Length == 0 ? "read" : outcome);
        if (of == FlowKeys.Runs) return (CountUnit.Program, outcome == "positive" ? "positives" : outcome);
        if (outcome == "not-followed-up") return Box(of);
        if (key.StartsWith(FlowKeys.Negative, StringComparison.Ordinal))
            return (CountUnit.Program, of == FlowKeys.Negative ? outcome == "tested" ? "audited" : "not_audited" : "a." + outcome);
        var prefix = key.StartsWith(FlowKeys.Positive, StringComparison.Ordinal) ? "p." : "i.";
        return (CountUnit.Program, prefix + (outcome == "not-tested" ? "untested" : outcome));
    }

    // Rows of the export of sites are sites, not people or runs.
    private static bool IsOfSites(Tables.Row row) => row["export"] == "sites";
}
