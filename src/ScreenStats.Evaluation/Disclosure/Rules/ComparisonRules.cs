using ScreenStats.Evaluation.Disclosure.Counts;
using static ScreenStats.Evaluation.Disclosure.Rules.RuleColumns;

namespace ScreenStats.Evaluation.Disclosure.Rules;

/// <summary>
/// Sites side by side: the counts of all runs, as the table of sites has them. What is expected, adjusted, ranked or placed rests on counts by period and device, which are shown nowhere,
/// and so do the other tables of the comparison: they have no rule. Within findings.json the figures of a part go by their names, so that the rate as counted is hidden with them here; the table of
/// positivity has it.
/// </summary>
internal static class ComparisonRules
{
    public static IEnumerable<TableRule> All()
    {
        var names = Names(ColumnRule.Free, "measure", "basis", "by", "level", "method", "confidence", "widened_method", "adjusted_method").ToArray();
        var finer = Names(
            ColumnRule.Finer, "estimate", "lower", "upper", "widened_lower", "widened_upper", "expected", "ratio", "ratio_lower", "ratio_upper", "standardised", "standardised_lower", "standardised_upper",
            "adjusted", "adjusted_lower", "adjusted_upper", "rank", "rank_lower", "rank_upper", "probability_highest", "standing", "standing_limits", "raw_standing", "funnel_trials", "funnel_rate",
            "p_value", "p_value_holm", "stands_out", "design_effect", "clusters", "cluster_count", "few_counts", "remark").ToArray();
        yield return new("comparison", row => row["by"] == "site" && row["basis"] == "all" && row["measure"] is ("positivity" or "invalid-runs"), row => new CountUnit("site", row["level"], ""), row =>
        {
            var (trials, events) = row["measure"] == "positivity" ? ("tests", "positives") : ("runs", "unusable");
            // A site without trials has no row.
            return Together(names, finer, [("trials", ColumnRule.Present(trials)), ("events", ColumnRule.Count(events))]);
        });
    }
}
