using System.Collections.Immutable;
using ScreenStats.Counting.Cubes;
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
                Share(kind, expected), [("failed", ColumnRule.Drawn(kind, expected))], Compared);
        });
        // How often a site screened or an operator started, and the runs around a failed control, are counted nowhere else: those tables have no rule.
        yield return new("control-starts", row => row["trigger"] != "new-operator", row => new CountUnit("site", row["site"], ""), Always(
            Names(ColumnRule.Free, "trigger", "level", "site", "required", "first_day", "first_control_day", "is_missed", "is_open"), Names(ColumnRule.Finer, "runs_without_control")));
        // What an alarm counts is counted nowhere else: the alarms themselves may be seen, except of operators and of single runs and controls.
        yield return new("alarms", row => row["by"] is "lot" or "site" && row["rule"] is "lot-evidence" or "refuted-rise" or "low-yield" or "invalid-evidence" or "invalid-rise", Part, Always(
            Names(ColumnRule.Free, "rule", "by", "level", "since", "until", "status", "statistic_threshold", "method", "next"),
            Names(ColumnRule.Finer, "days", "evidence", "found", "among", "expected", "statistic")));
        // It has rows of some lots only; a count in it would say that all others have none. The table of lots has it.
        yield return new("lot-alarms", _ => true, row => new CountUnit("lot", row["lot"], ""), Always(
            Names(ColumnRule.Free, "lot", "flagged", "alarm_day", "rule", "last_use"), Names(ColumnRule.Finer, "refuted", "refuted_before", "refuted_by", "positives_after", "runs_after")));
        yield return Rates();
        yield return Contrasts();
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

    private static IEnumerable<(string Name, ColumnRule Rule)> Compared => Names(ColumnRule.Finer, "expected_events", "p", "p_holm", "compared");

    // Without a run of which it could be told nothing is said. Of the other measures, the runs that they could be told of are counted nowhere else; their events stand in the table of conduct.
    private static TableRule Rates() => new(
        "conduct-rates",
        row => Cut(row) && row["trials"] != "0" && (row["measure"] is "within-isolation" or "repeat-not-done" || (row["measure"] == "self-collected" && row["by"] == "program")),
        Part,
        row =>
        {
            var (trials, events) = row["measure"] switch
            {
                "within-isolation" => (ColumnRule.Count("runs"), ColumnRule.Count("x.within-isolation")),
                "repeat-not-done" => (ColumnRule.Count("r.both.due"), ColumnRule.Drawn("r.both.due", "r.both.done")),
                _ => (ColumnRule.Drawn(Measure.Program("runs"), new Measure(new CountUnit("collection", Levels.None, ""), "runs")),
                    ColumnRule.Count(new Measure(new CountUnit("collection", "self", ""), "runs"))),
            };
            return Together(
                Level, Names(ColumnRule.Free, "measure", "method", "confidence", "widened_method"), [("trials", trials), ("events", events)],
                Names(ColumnRule.Drawn([.. trials.Measures, .. events.Measures]), "estimate", "lower", "upper", "few_counts"),
                Names(ColumnRule.Finer, "widened_lower", "widened_upper", "design_effect", "clusters", "cluster_count", "remark"), Compared);
        });

    // Within site-weeks stand counts that are summed nowhere else.
    private static TableRule Contrasts() => new(
        "conduct-contrasts", row => row["adjustment"] == "none" && Shares.ContainsKey(row["measure"]), row => new CountUnit(row["by"], row["first"], ""), row =>
        {
            var (trials, events) = Shares[row["measure"]];
            var second = new CountUnit(row["by"], row["second"], "");
            ImmutableArray<Measure> all = [trials, events, new(second, trials), new(second, events)];
            return Together(
                Names(ColumnRule.Free, "by", "first", "second", "measure", "adjustment", "method", "confidence", "strata"),
                [("first_trials", ColumnRule.Count(trials)), ("first_events", ColumnRule.Count(events)), ("second_trials", ColumnRule.Count(all[2])), ("second_events", ColumnRule.Count(all[3]))],
                Names(ColumnRule.Drawn(all), "estimate", "lower", "upper", "few_counts"),
                Names(ColumnRule.Finer, "widened_lower", "widened_upper", "remark", "leaves_out_zero"));
        });

    private static readonly Dictionary<string, (string Trials, string Events)> Shares = new(StringComparer.Ordinal)
    {
        ["positivity"] = ("tests", "positives"),
        ["invalid-runs"] = ("runs", "unusable"),
        ["refuted-per-valid-test"] = ("tests", "p.refuted"),
    };
}
