using ScreenStats.Evaluation.Disclosure.Counts;
using ScreenStats.Evaluation.Disclosure.Tables;
using static ScreenStats.Evaluation.Disclosure.Rules.RuleColumns;

namespace ScreenStats.Evaluation.Disclosure.Rules;

/// <summary>Tables of runs and their follow-up. Measures: p. are positive runs by follow-up, i. inconclusive ones, a. audited negative ones.</summary>
internal static class RunRules
{
    /// <summary>The bounds beside an observed predictive value in findings.json: no table, but the same rows.</summary>
    public const string Bounds = "predictive-value-bounds";

    /// <summary>All lots but those that are flagged for refuted positives.</summary>
    public static CountUnit Unflagged { get; } = new("unflagged", "", "");

    public static IEnumerable<TableRule> All()
    {
        yield return new("positivity", Cut, Part, Always(Level, Columns(("tests", "tests"), ("positives", "positives")), Share("tests", "positives")));
        yield return new("invalid-runs", Cut, Part, Always(Level, Columns(("runs", "runs"), ("inconclusive", "inconclusive"), ("invalid", "invalid")), Share("runs", "unusable")));
        yield return new("lots", Every, row => new CountUnit("lot", row["lot"], ""), Judged("lot"));
        yield return new("sites", Every, row => new CountUnit("site", row["site"], ""), Judged("site"));
        yield return new("refuted", Cut, Part, Always(
            Level, Columns(("tests", "tests"), ("valid_tests", "tests"), ("refuted", "p.refuted"), ("refuted_runs", "p.refuted"), ("without_conclusion", "p.open")), Share("tests", "p.refuted"),
            Names(ColumnRule.Drawn("tests", "p.refuted"), "per_thousand"), Names(ColumnRule.Drawn("tests", "p.refuted", "p.open"), "per_thousand_bound")));
        var (positive, inconclusive) = (FollowUp("p.", "positives"), FollowUp("i.", "inconclusive"));
        yield return new("follow-up", row => Cut(row) && row["outcome"] is "positive" or "inconclusive", Part, row => row["outcome"] == "positive" ? positive : inconclusive);
        yield return Predictive();
        var bounds = Together(
            Columns(("confirmed", "p.confirmed"), ("refuted", "p.refuted"), ("without_conclusion", "p.open"), ("positives", "positives")),
            Names(ColumnRule.Drawn("p.confirmed", "p.refuted", "p.open"), "lower", "upper"));
        yield return new(Bounds, Observed, Observation, _ => bounds);
    }

    private static Func<Row, IReadOnlyDictionary<string, ColumnRule>> Judged(string name) => Always(
        Names(ColumnRule.Free, name, "flag"),
        Columns(("runs", "runs"), ("inconclusive", "inconclusive"), ("invalid", "invalid"), ("unusable", "unusable"), ("tests", "tests"), ("positives", "positives"),
            ("confirmed", "p.confirmed"), ("refuted", "p.refuted"), ("conclusive", "p.conclusive")),
        Names(ColumnRule.Finer, "invalid_p", "invalid_p_holm", "refuted_p", "refuted_p_holm", "invalid_p_widened", "refuted_p_widened", "invalid_judged", "invalid_judged_runs", "invalid_round", "refuted_judged", "refuted_judged_tests", "refuted_round"));

    private static Dictionary<string, ColumnRule> FollowUp(string prefix, string due) => Together(
        Level, Names(ColumnRule.Free, "outcome"),
        Columns(("due", due), ("confirmed", prefix + "confirmed"), ("refuted", prefix + "refuted"), ("unresolved", prefix + "unresolved"), ("pending", prefix + "pending"),
            ("unverified", prefix + "unverified"), ("conclusive", prefix + "conclusive")),
        Share(due, prefix + "conclusive"),
        Names(ColumnRule.Drawn(due, prefix + "unverified"), "unverified_share"), Names(ColumnRule.Drawn(due, prefix + "pending"), "pending_share"));

    // A site without the flagged lots is a site by lot: too fine. The whole program without them is not.
    private static bool Observed(Row row) => row["basis"] == "observed" ? Cut(row) : row["basis"] == "observed-without-flagged-lots" && row["by"] == "program";

    private static CountUnit Observation(Row row) => row["basis"] == "observed-without-flagged-lots" ? Unflagged : Part(row);

    private static TableRule Predictive()
    {
        var names = Names(ColumnRule.Free, "by", "level", "basis", "measure", "method", "confidence", "prevalence", "prevalence_source", "widened_method", "with_prevalence_lower", "with_prevalence_upper").ToArray();
        var observed = Together(
            names,
            Columns(("confirmed", "p.confirmed"), ("refuted", "p.refuted"), ("without_conclusion", "p.open")),
            Names(ColumnRule.Drawn("p.confirmed", "p.conclusive"), "estimate", "lower", "upper", "events", "trials", "few_counts"),
            Names(ColumnRule.Widened("p.conclusive", "p.confirmed"), "widened_lower", "widened_upper"),
            Names(ColumnRule.Drawn("p.confirmed", "p.conclusive", "p.open"), "bound_lower", "bound_upper"),
            Names(ColumnRule.Finer, "design_effect"));
        var expected = Together(
            names,
            Names(ColumnRule.Free, "estimate", "lower", "upper", "confirmed", "refuted", "without_conclusion", "bound_lower", "bound_upper", "widened_lower", "widened_upper", "design_effect"));
        return new("predictive-values", row => row["basis"] == "expected" || Observed(row), Observation, row => row["basis"] == "expected" ? expected : observed);
    }
}
