using ScreenStats.Evaluation.Disclosure.Counts;
using ScreenStats.Evaluation.Disclosure.Tables;
using static ScreenStats.Evaluation.Disclosure.Rules.RuleColumns;

namespace ScreenStats.Evaluation.Disclosure.Rules;

/// <summary>
/// Tables of rates over time. Periods without flagged lots are periods by lot, which is too fine; so are weeks in place of days, which are sums that no other
/// table shows. Smooths, growth and changes are drawn from weeks, whatever the reporting period is: never shown where small counts are hidden.
/// </summary>
internal static class TimeRules
{
    public static IEnumerable<TableRule> All()
    {
        var names = Names(ColumnRule.Free, "measure", "basis", "by", "level", "period_start", "period_end", "period", "community", "leads", "method", "confidence", "widened_method").ToArray();
        var points = new Dictionary<string, IReadOnlyDictionary<string, ColumnRule>>(StringComparer.Ordinal)
        {
            ["positivity"] = Points("tests", "positives", ColumnRule.Free),
            ["invalid-runs"] = Points("runs", "unusable", ColumnRule.Free),
            // That a period is not complete says that some of its positives, or of those before, wait.
            ["predictive-value"] = Points("p.conclusive", "p.confirmed", ColumnRule.Finer),
        };
        yield return new("trends", row => row["basis"] == "all" && row["by"] == "program" && !row["period"].Contains("-for-", StringComparison.Ordinal), Part, row => points[row["measure"]]);
        yield return new("growth", _ => true, _ => CountUnit.Program, Always(
            Names(ColumnRule.Free, "measure", "basis", "by", "level", "from", "to", "segment", "method", "confidence", "leads"),
            Names(ColumnRule.Finer, "points", "direction", "growth_per_week", "estimate", "lower", "upper", "doubling_days", "doubling_lower", "doubling_upper", "halving_days", "halving_lower", "halving_upper", "rate_from", "rate_to", "fastest_doubling", "stands_out")));
        yield return new("trend-changes", _ => true, _ => CountUnit.Program, Always(
            Names(ColumnRule.Free, "measure", "basis", "kind", "on", "what", "sites", "method", "leads"),
            Names(ColumnRule.Finer, "on_lower", "on_upper", "estimate", "lower", "upper", "level_ratio", "level_lower", "level_upper", "slope_before", "slope_after", "slope_ratio", "slope_lower", "slope_upper", "p_value")));
        var days = new Dictionary<string, IReadOnlyDictionary<string, ColumnRule>>(StringComparer.Ordinal)
        {
            ["positivity"] = Days("tests", "positives"),
            ["invalid-runs"] = Days("runs", "unusable"),
            ["predictive-value"] = Days("p.conclusive", "p.confirmed"),
        };
        yield return new("weekdays", row => row["basis"] == "all", row => new CountUnit("weekday", row["weekday"], ""), row => days[row["measure"]]) { Optional = true };

        Dictionary<string, ColumnRule> Points(string trials, string events, ColumnRule complete) => Together(
            names, Columns(("trials", trials), ("events", events), ("pending", "p.pending")),
            Names(complete, "complete"),
            Names(ColumnRule.Drawn(trials, events), "estimate", "lower", "upper", "few_counts"),
            Names(ColumnRule.Widened(trials, events), "widened_lower", "widened_upper"),
            Names(ColumnRule.Finer, "smooth", "smooth_lower", "smooth_upper", "spline", "spline_lower", "spline_upper", "design_effect"));

        Dictionary<string, ColumnRule> Days(string trials, string events) => Together(
            Names(ColumnRule.Free, "measure", "basis", "weekday", "within", "method", "confidence", "leads"),
            Columns(("trials", trials), ("events", events)),
            Names(ColumnRule.Drawn(trials, events), "estimate", "lower", "upper", "few_counts"),
            Names(ColumnRule.Widened(trials, events), "widened_lower", "widened_upper"),
            Names(ColumnRule.Finer, "odds_ratio", "ratio_lower", "ratio_upper", "p_value", "design_effect"));
    }
}
