using System.Collections.Immutable;
using ScreenStats.Evaluation.Disclosure.Counts;
using ScreenStats.Evaluation.Disclosure.Tables;
using static ScreenStats.Evaluation.Disclosure.Rules.RuleColumns;

namespace ScreenStats.Evaluation.Disclosure.Rules;

/// <summary>Tables of confirmatory specimens, audits and waiting times. Measures: s. are specimens, d. waiting times, ic. interval cases, a. audited negative runs.</summary>
internal static class SpecimenRules
{
    /// <summary>All sampling strata together.</summary>
    public static CountUnit Strata { get; } = new("strata", "", "");

    public static IEnumerable<TableRule> All()
    {
        yield return new("audits", Cut, Part, Always(
            Level, [("audited", ColumnRule.Present("audited"))], Columns(("missed", "a.missed"), ("agreed", "a.agreed"), ("unresolved", "a.unresolved")), Share("a.conclusive", "a.agreed")));
        yield return new("audit-strata", Every, row => new CountUnit("stratum", row["stratum"], ""), Always(
            Names(ColumnRule.Free, "stratum", "known_by"), Columns(("negatives", "negative"), ("audited", "a.conclusive"), ("missed", "a.missed"), ("agreed", "a.agreed")),
            Names(ColumnRule.Drawn("negative", "a.conclusive"), "weight")));
        yield return Accuracy();
        yield return new("proven-specificity", Every, row => row["device"].Length == 0 ? CountUnit.Program : DeviceRules.Device(row["device"]), Always(
            Names(ColumnRule.Free, "device", "method", "confidence", "stated_specificity", "stated_upper"),
            Columns(("tests", "tests"), ("valid_tests", "tests"), ("positives", "positives")),
            Names(ColumnRule.Widened("tests", "positives", ColumnRule.Shape.Proof), "specificity_at_least", "specificity_lower"),
            Names(ColumnRule.Drawn("tests", "positives", "p.refuted", "p.open"), "claim"), Names(ColumnRule.Finer, "design_effect")));
        yield return new("specimens", Every, row => row["reason"] == "all" ? CountUnit.Program : new CountUnit("reason", row["reason"], ""), row => Together(
            Names(ColumnRule.Free, "reason"),
            [("specimens", row["reason"] == "all" ? ColumnRule.Count("s.all") : ColumnRule.Present("s.all"))],
            Columns(("persons", "s.persons"), ("negative", "s.negative"), ("indeterminate", "s.indeterminate"), ("rejected", "s.rejected"), ("positive", "s.positive")),
            Share("s.conclusive", "s.positive")));
        yield return new("delays", Cut, Part, row =>
        {
            var kind = $"d.{row["kind"]}.";
            return Together(
                Level, Names(ColumnRule.Free, "kind"), Columns(("resulted", kind + "known"), ("unresulted", kind + "unresulted"), ("whole_days", kind + "whole")),
                Names(ColumnRule.Rank(0.5, kind + "known"), "median_hours"), Names(ColumnRule.Rank(0.1, kind + "known"), "percentile_90_hours", "percentile90_hours"));
        });
        yield return new("interval-cases", Every, row => new CountUnit("interval", row["days_since_run"], ""), Always(
            Names(ColumnRule.Free, "days_since_run"), [("specimens", ColumnRule.Present("ic.day")), ("cumulative", ColumnRule.Present("ic.cumulative"))],
            Share("ic.cumulative", Measure.Program("cases")).Where(column => column.Name is not ("widened_lower" or "widened_upper")), Names(ColumnRule.Finer, "widened_lower", "widened_upper")));
    }

    // Estimates by sampling stratum rest on every stratum, their limits on single people too; bounds without assumption on the counts of the row alone.
    private static TableRule Accuracy()
    {
        var names = Together(
            Names(ColumnRule.Free, "by", "level", "measure", "basis", "method", "confidence"),
            Columns(("positives", "positives"), ("verified", "p.conclusive"), ("negatives", "negative"), ("audited", "a.conclusive"), ("missed", "a.missed")),
            Names(ColumnRule.Finer, "clusters", "cluster_count")).Select(pair => (pair.Key, pair.Value)).ToArray();
        var bounds = Together(names, Names(
            ColumnRule.Drawn("positives", "p.confirmed", "p.refuted", "negative", "a.conclusive", "a.missed"), "estimate", "lower", "upper", "with_error_lower", "with_error_upper", "remark"));
        ImmutableArray<Measure> counts =
        [
            Measure.Program("positives"), Measure.Program("p.confirmed"), Measure.Program("p.refuted"), "negative", "a.conclusive", "a.missed",
            Measure.Every("stratum", "negative"), Measure.Every("stratum", "a.conclusive"), Measure.Every("stratum", "a.missed"),
        ];
        var estimates = Together(
            names, Names(ColumnRule.Drawn(counts), "estimate"), Names(ColumnRule.WidenedOther(counts), "lower", "upper"),
            Names(ColumnRule.Finer, "with_error_lower", "with_error_upper", "remark"));
        return new("accuracy", Cut, row => row["basis"] == "no-assumption" ? Part(row) : Strata, row => row["basis"] == "no-assumption" ? bounds : estimates);
    }
}
