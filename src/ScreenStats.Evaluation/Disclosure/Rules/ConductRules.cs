using ScreenStats.Evaluation.Disclosure.Counts;
using ScreenStats.Evaluation.Disclosure.Tables;
using static ScreenStats.Evaluation.Disclosure.Rules.RuleColumns;

namespace ScreenStats.Evaluation.Disclosure.Rules;

/// <summary>Tables of how runs were done. Measures: x. are findings of conduct, r. repeats, k. runs of control swabs, t. retests.</summary>
internal static class ConductRules
{
    public static IEnumerable<TableRule> All()
    {
        // A place is listed only where something was found.
        yield return new("conduct", Cut, Part, row =>
        {
            var found = "x." + row["finding"];
            return Together(Level, Names(ColumnRule.Free, "finding"), Columns(("runs", "runs")),
                [("found", row["by"] == "program" ? ColumnRule.Count(found) : ColumnRule.Present(found)), ("share", ColumnRule.Drawn("runs", found))]);
        });
        yield return new("repeats", Cut, Part, row =>
        {
            var (due, done) = ($"r.{row["outcome"]}.due", $"r.{row["outcome"]}.done");
            return Together(Level, Names(ColumnRule.Free, "outcome"), Columns(("due", due), ("done", done)), Share(due, done));
        });
        yield return new("controls", Cut, Part, row =>
        {
            var kind = $"k.{row["expected"]}";
            var expected = $"{kind}.{row["expected"]}";
            return Together(
                Level, Names(ColumnRule.Free, "expected"),
                Columns(("runs", kind), ("negative", kind + ".negative"), ("positive", kind + ".positive"), ("inconclusive", kind + ".inconclusive"), ("invalid", kind + ".invalid"), ("as_expected", expected)),
                Share(kind, expected));
        });
        yield return new("retests", row => row["by"] is "program" or "site" or "device", row => row["by"] == "device" ? DeviceRules.Device(row["level"]) : new CountUnit(row["by"], row["level"], ""), row =>
        {
            var kind = row["retest_device"] == "any" ? "t." : $"t.{row["retest_device"]}.";
            return Together(
                Names(ColumnRule.Free, "by", "level", "retest_device", "with"),
                Columns(("positives", "positives"), ("pairs", kind + "pairs"), ("unusable", kind + "unusable"), ("concordant", kind + "again"), ("discordant", kind + "negative"),
                    ("concordant_confirmed", kind + "again.confirmed"), ("concordant_refuted", kind + "again.refuted"),
                    ("discordant_confirmed", kind + "negative.confirmed"), ("discordant_refuted", kind + "negative.refuted")),
                Share(kind + "usable", kind + "again"));
        });
    }
}
