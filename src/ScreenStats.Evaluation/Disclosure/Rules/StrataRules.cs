using ScreenStats.Evaluation.Disclosure.Counts;
using static ScreenStats.Evaluation.Disclosure.Rules.RuleColumns;

namespace ScreenStats.Evaluation.Disclosure.Rules;

/// <summary>Tables of lots and sites within strata. Counts within site-weeks are finer than anything that is shown; the marks are as flags are.</summary>
internal static class StrataRules
{
    public static IEnumerable<TableRule> All()
    {
        yield return Within("lot");
        yield return Within("site");
        yield return new("stand-outs", Every, row => new CountUnit(row["by"], row["level"], ""), Always(
            Names(ColumnRule.Free, "by", "level", "measure", "verdict", "flagged", "material", "method", "confidence"),
            Names(ColumnRule.Finer, "rank", "strata", "observed", "expected", "ratio", "estimate", "lower", "upper", "p_holm")));
        // How many runs have no lot is shown by site nowhere else.
        yield return new("lot-recording", Cut, Part, Always(
            Level, Columns(("runs", "runs"), ("trials", "runs"), ("refuted", "p.refuted")),
            Names(ColumnRule.Free, "method", "confidence", "widened_method"),
            Names(ColumnRule.Finer, "without_lot", "events", "estimate", "lower", "upper", "few_counts", "widened_lower", "widened_upper", "design_effect", "clusters", "cluster_count", "remark",
                "tests_without_lot", "refuted_without_lot", "seen_from", "recorded_seen_from")));
    }

    private static TableRule Within(string by) => new(by + "-tests", Every, row => new CountUnit(by, row[by], ""), Always(
        Names(ColumnRule.Free, by, "place", "measure", "direction", "method", "confidence", "material", "low_yield", "rate_method"),
        Names(ColumnRule.Finer, "strata", "observed", "expected", "ratio", "estimate", "lower", "upper", "overdispersion", "p", "p_holm", "rate", "rate_lower", "rate_upper", "chance_above_twice")));
}
