using System.Collections.Immutable;
using ScreenStats.Evaluation.Disclosure.Counts;
using ScreenStats.Evaluation.Disclosure.Tables;
using static ScreenStats.Evaluation.Disclosure.Rules.RuleColumns;

namespace ScreenStats.Evaluation.Disclosure.Rules;

/// <summary>Tables by device. A device is its lots, so its counts are sums of theirs (see <see cref="Tables.ReleaseRelations"/>).</summary>
internal static class DeviceRules
{
    /// <summary>All devices whose accuracy is stated.</summary>
    public static CountUnit WithAccuracy { get; } = new("devices", "", "");

    private static readonly Dictionary<string, (string Trials, string Events)> Shares = new(StringComparer.Ordinal)
    {
        ["positivity"] = ("tests", "positives"),
        ["invalid-runs"] = ("runs", "unusable"),
        ["refuted-per-valid-test"] = ("tests", "p.refuted"),
        ["positive-predictive-value"] = ("p.conclusive", "p.confirmed"),
    };

    public static IEnumerable<TableRule> All()
    {
        yield return new("kits", row => Shares.ContainsKey(row["measure"]), row => Device(row["device"]), row =>
        {
            var (trials, events) = Shares[row["measure"]];
            return Together(Names(ColumnRule.Free, "device", "measure"), Columns(("runs", "runs")), [("trials", ColumnRule.Count(trials)), ("events", ColumnRule.Count(events))],
                Share(trials, events).Where(column => column.Name is not ("trials" or "events")));
        });
        yield return Contrasts();
        yield return Expected();
        yield return TruePrevalence();
        yield return new("predictive-value-curve", Every, _ => CountUnit.Program, Always(Names(
            ColumnRule.Free, "device", "prevalence", "positive_predictive_value", "positive_lower", "positive_upper", "negative_predictive_value", "negative_lower", "negative_upper",
            "id", "label", "source", "positive", "negative")));
    }

    public static CountUnit Device(string name) => new("device", name, "");

    // Within site-weeks, or without some lots, stand counts that are summed nowhere else.
    private static TableRule Contrasts() => new("kit-contrasts", row => row["adjustment"] == "none" && Shares.ContainsKey(row["measure"]), row => Device(row["first"]), row =>
    {
        var (trials, events) = Shares[row["measure"]];
        var second = Device(row["second"]);
        ImmutableArray<Measure> all = [trials, events, new(second, trials), new(second, events)];
        return Together(
            Names(ColumnRule.Free, "first", "second", "measure", "adjustment", "method", "confidence", "strata"),
            [("first_trials", ColumnRule.Count(trials)), ("first_events", ColumnRule.Count(events)), ("second_trials", ColumnRule.Count(all[2])), ("second_events", ColumnRule.Count(all[3]))],
            Names(ColumnRule.Drawn(all), "estimate", "lower", "upper", "few_counts"),
            Names(ColumnRule.Finer, "widened_lower", "widened_upper", "remark", "leaves_out_zero"));
    });

    // The outcome rests on widened limits: one of three words, shown where the counts themselves are.
    private static TableRule Expected()
    {
        ImmutableArray<Measure> counts = ["tests", "positives", "p.confirmed", "p.refuted", "p.open"];
        var columns = Together(
            Names(ColumnRule.Free, "device", "stated_specificity", "stated_false_positive_rate", "stated_lower", "stated_upper", "method", "confidence", "widened_method",
                "stated_false_positive_rate_lower", "stated_false_positive_rate_upper", "value", "taken_as_exact"),
            Columns(("tests", "tests"), ("valid_tests", "tests"), ("positives", "positives"), ("confirmed", "p.confirmed"), ("refuted", "p.refuted"), ("without_conclusion", "p.open")),
            Names(ColumnRule.Drawn(counts), "estimate", "lower", "upper", "events", "trials", "few_counts", "bound_upper", "refuted_rate_bound_upper", "outcome", "compatibility", "explanation", "positivity_below_stated_rate",
                "corrected_prevalence", "corrected_lower", "corrected_upper"),
            Names(ColumnRule.Widened("tests", "p.refuted"), "widened_lower", "widened_upper"),
            Names(ColumnRule.Finer, "design_effect", "clusters", "cluster_count", "remark"));
        return new("expected-against-observed", Every, row => Device(row["device"]), _ => columns);
    }

    // With several devices the figure is weighted by the tests of each: known for the whole program, too fine for its parts.
    private static TableRule TruePrevalence() => new(
        "true-prevalence",
        row => Cut(row) && (row["devices"].Contains(';', StringComparison.Ordinal) || row["tests_without_accuracy"] is not ("0" or "hidden")
            ? row["by"] == "program" && row["period_start"].Length == 0
            : true),
        row => row["by"] == "program" && row["period_start"].Length == 0 ? WithAccuracy : Part(row),
        row =>
        {
            ImmutableArray<Measure> counts = ["tests", "positives", .. row["by"] == "program" && row["period_start"].Length == 0
                ? row["devices"].Split(';', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries).Select(name => new Measure(Device(name), "tests")).Append(Measure.Program("tests")) : []];
            return Together(
                Level, Columns(("tests", "tests"), ("positives", "positives")),
                Share("tests", "positives").Where(column => column.Name is not ("estimate" or "lower" or "upper" or "widened_lower" or "widened_upper")), Names(ColumnRule.WidenedOther(counts), "widened_lower", "widened_upper"),
                Names(ColumnRule.Drawn(counts), "estimate", "lower", "upper", "apparent", "unclipped", "sensitivity", "specificity", "tests_without_accuracy", "below_false_positive_rate", "above_sensitivity"),
                Names(ColumnRule.Free, "devices"));
        });
}
