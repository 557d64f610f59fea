using System.Collections.Frozen;
using ScreenStats.Evaluation.Disclosure.Counts;

namespace ScreenStats.Evaluation.Disclosure.Tables;

/// <summary>
/// The tables that a release with hidden counts may hold, and what their columns stand for. A table that is not here is left out of such a
/// release: a new one is safe before it is useful.
/// </summary>
internal static class TableRules
{
    /// <summary>The bounds beside an observed predictive value in findings.json: no table, but the same rows.</summary>
    public const string Bounds = "predictive-value-bounds";

    private static readonly FrozenSet<string> Breakdowns = new[] { "program", "site", "lot", "specimen", "collection" }.ToFrozenSet(StringComparer.Ordinal);
    private static readonly FrozenDictionary<string, TableRule> All = Every().ToFrozenDictionary(rule => rule.Id, StringComparer.Ordinal);

    /// <summary>The rule of a table; null where it is left out.</summary>
    public static TableRule? Of(string id) => All.GetValueOrDefault(id);

    /// <summary>Every table with a rule, in the order in which counts are taken from them.</summary>
    public static IEnumerable<TableRule> Ordered => Every();

    private static IEnumerable<TableRule> Every()
    {
        yield return new("positivity", Cut, Part, Always(("tests", "tests"), ("positives", "positives")).Share("tests", "positives"));
        yield return new("invalid-runs", Cut, Part, Always(("runs", "runs"), ("inconclusive", "inconclusive"), ("invalid", "invalid")).Share("runs", "unusable"));
        yield return new("lots", _ => true, row => new CountUnit("lot", row["lot"], ""), Judged("lot"));
        yield return new("sites", _ => true, row => new CountUnit("site", row["site"], ""), Judged("site"));
        yield return new("refuted", Cut, Part, With(
            Always(("tests", "tests"), ("valid_tests", "tests"), ("refuted", "p.refuted"), ("refuted_runs", "p.refuted"), ("without_conclusion", "p.open")).Share("tests", "p.refuted"),
            ("per_thousand", ColumnRule.Drawn("tests", "p.refuted")), ("per_thousand_bound", ColumnRule.Drawn("tests", "p.refuted", "p.open"))));
        var positive = FollowUp("p.", "positives");
        var inconclusive = FollowUp("i.", "inconclusive");
        yield return new("follow-up", row => Cut(row) && row["outcome"] is "positive" or "inconclusive", Part, row => row["outcome"] == "positive" ? positive : inconclusive);
        yield return new("audits", Cut, Part, Always(("audited", "audited"), ("missed", "a.missed"), ("agreed", "a.agreed"), ("unresolved", "a.unresolved")).Share("a.conclusive", "a.agreed"));
        yield return Predictive();
        yield return new(Bounds, row => row["basis"] == "observed" && Cut(row), Part, _ => Dictionary([
            ("confirmed", ColumnRule.Count("p.confirmed")), ("refuted", ColumnRule.Count("p.refuted")), ("without_conclusion", ColumnRule.Count("p.open")),
            .. Names(ColumnRule.Drawn("p.confirmed", "p.refuted", "p.open"), "lower", "upper")]));
        yield return TruePrevalence();
        yield return new("ledger", _ => true, row => new CountUnit("ledger", row["export"], ""), row => Dictionary(("export", ColumnRule.Free), ("entry", ColumnRule.Free), ("rows", ColumnRule.Count(row["entry"]))));
        yield return new("persons", row => row["by"] == "program", Part, With(
            Always(("persons", "persons"), ("tested", "persons"), ("ever_positive", "ever_positive"), ("cases", "cases"), ("cases_through_positive", "c.positive"),
                ("cases_through_inconclusive", "c.inconclusive"), ("person_weeks", "person_weeks")).Share("cases", "person_weeks"),
            ("cases_per_1000_person_weeks", ColumnRule.Drawn("cases", "person_weeks")), ("cases_per_thousand_person_weeks", ColumnRule.Drawn("cases", "person_weeks"))));
        yield return new("yield", _ => true, _ => CountUnit.Program, Yield);
        yield return new("expected-against-observed", _ => true, row => new CountUnit("device", row["device"], ""), _ => Dictionary([
            .. Names(ColumnRule.Free, "device", "stated_specificity", "stated_false_positive_rate", "stated_lower", "stated_upper", "method", "confidence", "widened_method",
                "stated_false_positive_rate_lower", "stated_false_positive_rate_upper"),
            .. Names(ColumnRule.Finer, "tests", "positives", "confirmed", "refuted", "without_conclusion", "estimate", "lower", "upper", "widened_lower", "widened_upper",
                "design_effect", "clusters", "cluster_count", "remark", "bound_upper", "outcome", "corrected_prevalence", "corrected_lower", "corrected_upper")]));
        yield return new("predictive-value-curve", _ => true, _ => CountUnit.Program, _ => Dictionary([.. Names(
            ColumnRule.Free, "device", "prevalence", "positive_predictive_value", "positive_lower", "positive_upper", "negative_predictive_value", "negative_lower", "negative_upper")]));
    }

    // The whole span by one thing at a time, or the whole program by period: site by period, operators and devices are too fine.
    private static bool Cut(Row row) => row["period_start"].Length == 0 ? Breakdowns.Contains(row["by"]) : row["by"] == "program";

    private static CountUnit Part(Row row) => new(row["by"], row["level"], row["period_start"]);

    private static Func<Row, IReadOnlyDictionary<string, ColumnRule>> Judged(string name)
    {
        var columns = Dictionary([
            (name, ColumnRule.Free), ("flag", ColumnRule.Free),
            .. new[] { ("runs", "runs"), ("inconclusive", "inconclusive"), ("invalid", "invalid"), ("unusable", "unusable"), ("tests", "tests"), ("positives", "positives"), ("confirmed", "p.confirmed"), ("refuted", "p.refuted"), ("conclusive", "p.conclusive") }
                .Select(pair => (pair.Item1, ColumnRule.Count(pair.Item2))),
            .. Names(ColumnRule.Finer, "invalid_p", "invalid_p_holm", "refuted_p", "refuted_p_holm", "invalid_judged", "invalid_judged_runs", "invalid_round", "refuted_judged", "refuted_judged_tests", "refuted_round")]);
        return _ => columns;
    }

    private static IReadOnlyDictionary<string, ColumnRule> FollowUp(string prefix, string due) => With(
        Always(("due", due), ("confirmed", prefix + "confirmed"), ("refuted", prefix + "refuted"), ("unresolved", prefix + "unresolved"), ("pending", prefix + "pending"),
            ("unverified", prefix + "unverified"), ("conclusive", prefix + "conclusive")).Share(due, prefix + "conclusive"),
        ("outcome", ColumnRule.Free), ("unverified_share", ColumnRule.Drawn(due, prefix + "unverified")), ("pending_share", ColumnRule.Drawn(due, prefix + "pending")))(default);

    private static TableRule Predictive()
    {
        var names = Names(ColumnRule.Free, "by", "level", "basis", "measure", "method", "confidence", "prevalence", "prevalence_source", "widened_method", "with_prevalence_lower", "with_prevalence_upper").ToArray();
        var observed = Dictionary([
            .. names,
            ("confirmed", ColumnRule.Count("p.confirmed")), ("refuted", ColumnRule.Count("p.refuted")), ("without_conclusion", ColumnRule.Count("p.open")),
            .. Names(ColumnRule.Drawn("p.confirmed", "p.conclusive"), "estimate", "lower", "upper", "events", "trials"),
            .. Names(ColumnRule.Drawn("p.confirmed", "p.conclusive", "p.open"), "bound_lower", "bound_upper"),
            .. Names(ColumnRule.Finer, "widened_lower", "widened_upper", "design_effect")]);
        var expected = Dictionary([
            .. names,
            .. Names(ColumnRule.Free, "estimate", "lower", "upper", "confirmed", "refuted", "without_conclusion", "bound_lower", "bound_upper", "widened_lower", "widened_upper", "design_effect")]);
        return new("predictive-values", row => row["basis"] == "expected" || (row["basis"] == "observed" && Cut(row)), Part, row => row["basis"] == "expected" ? expected : observed);
    }

    // The figures of several devices, or of some of the tests, stand on counts by lot that are summed nowhere else.
    private static TableRule TruePrevalence() => new(
        "true-prevalence",
        row => Cut(row) && row["tests_without_accuracy"] is "0" or "hidden" && !row["devices"].Contains(';', StringComparison.Ordinal),
        Part,
        With(
            Always(("tests", "tests"), ("positives", "positives")).Share("tests", "positives"),
            ("apparent", ColumnRule.Drawn("tests", "positives")), ("unclipped", ColumnRule.Drawn("tests", "positives")),
            ("sensitivity", ColumnRule.Free), ("specificity", ColumnRule.Free), ("devices", ColumnRule.Free), ("tests_without_accuracy", ColumnRule.Finer)));

    private static Dictionary<string, ColumnRule> Yield(Row row)
    {
        var (done, found) = row["measure"] switch
        {
            "runs-per-case" => ("runs", "cases"),
            "persons-per-case" => ("persons", "cases"),
            "tests-per-confirmed-run" => ("tests", "p.confirmed"),
            "tests-per-refuted-run" => ("tests", "p.refuted"),
            _ => ("", ""),
        };
        return Dictionary([
            .. Names(ColumnRule.Free, "measure", "method", "confidence", "widened_method"),
            ("done", ColumnRule.Count(done)), ("found", ColumnRule.Count(found)),
            .. Names(ColumnRule.Drawn(done, found), "estimate", "lower", "upper"),
            .. Names(ColumnRule.Finer, "widened_lower", "widened_upper")]);
    }

    private static Dictionary<string, ColumnRule> Always(params (string Column, string Measure)[] counts) =>
        Dictionary([("by", ColumnRule.Free), ("level", ColumnRule.Free), ("period_start", ColumnRule.Free), .. counts.Select(pair => (pair.Column, ColumnRule.Count(pair.Measure)))]);

    private static Func<Row, IReadOnlyDictionary<string, ColumnRule>> Share(this Dictionary<string, ColumnRule> columns, string trials, string events)
    {
        foreach (var (name, rule) in Names(ColumnRule.Free, "method", "confidence", "widened_method")) columns.Add(name, rule);
        foreach (var (name, rule) in Names(ColumnRule.Drawn(trials, events), "estimate", "lower", "upper", "events", "trials")) columns.Add(name, rule);
        foreach (var (name, rule) in Names(ColumnRule.Finer, "widened_lower", "widened_upper", "design_effect", "clusters", "cluster_count", "remark")) columns.Add(name, rule);
        return _ => columns;
    }

    private static Func<Row, IReadOnlyDictionary<string, ColumnRule>> With(Func<Row, IReadOnlyDictionary<string, ColumnRule>> columns, params (string Name, ColumnRule Rule)[] more)
    {
        var all = Dictionary([.. columns(default).Select(pair => (pair.Key, pair.Value)), .. more]);
        return _ => all;
    }

    private static IEnumerable<(string Name, ColumnRule Rule)> Names(ColumnRule rule, params string[] names) => names.Select(name => (name, rule));

    private static Dictionary<string, ColumnRule> Dictionary(params (string Name, ColumnRule Rule)[] rules) => rules.ToDictionary(pair => pair.Name, pair => pair.Rule, StringComparer.Ordinal);
}
