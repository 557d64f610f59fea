using ScreenStats.Evaluation.Disclosure.Counts;
using ScreenStats.Evaluation.Disclosure.Tables;
using static ScreenStats.Evaluation.Disclosure.Rules.RuleColumns;

namespace ScreenStats.Evaluation.Disclosure.Rules;

/// <summary>
/// Tables of what has changed since an earlier evaluation. That one hides as much and is taken into account as an earlier release: its figures
/// are known to readers, hidden ones are not there at all. What is drawn from these and from figures of this release that are shown tells nothing new; what is
/// drawn from a hidden one is hidden.
/// </summary>
internal static class ChangeRules
{
    private static readonly Dictionary<string, (string Trials, string Events)> Shares = new(StringComparer.Ordinal)
    {
        ["positive-predictive-value"] = ("p.conclusive", "p.confirmed"),
        ["positivity"] = ("tests", "positives"),
        ["confirmed-per-valid-test"] = ("tests", "p.confirmed"),
        ["refuted-per-valid-test"] = ("tests", "p.refuted"),
        ["invalid-runs"] = ("runs", "unusable"),
        ["follow-up"] = ("positives", "p.conclusive"),
        ["cases-per-person-week"] = ("person_weeks", "cases"),
        ["negative-predictive-value"] = ("a.conclusive", "a.agreed"),
        ["coverage"] = ("v.eligible", "v.persons"),
    };

    public static IEnumerable<TableRule> All()
    {
        var columns = Shares.ToDictionary(share => share.Key, share => Figures(share.Value.Trials, share.Value.Events), StringComparer.Ordinal);
        yield return new("changes", row => columns.ContainsKey(row["measure"]), row => new CountUnit(row["by"], row["level"], ""), row => columns[row["measure"]]);
        yield return new("changed-flags", Every, Nothing, Always(Names(ColumnRule.Free, "by", "level", "change", "earlier_flag", "later_flag")));
        yield return new("changed-settings", Every, Nothing, Always(Names(ColumnRule.Free, "setting", "earlier", "later")));
        yield return new("changed-answers", Every, Nothing, Always(Names(ColumnRule.Free, "question", "earlier", "later")));
    }

    /// <summary>A unit of which nothing is counted.</summary>
    private static CountUnit Nothing(Row row) => new("changed", "", "");

    private static Dictionary<string, ColumnRule> Figures(string trials, string events) => Together(
        Names(ColumnRule.Free, "by", "level", "measure", "earlier_events", "earlier_trials", "earlier_estimate", "method", "confidence"),
        Names(ColumnRule.Drawn(events), "later_events"),
        Names(ColumnRule.Drawn(trials), "later_trials"),
        // Which way of comparing was open, and how it came out, speaks of the counts too.
        Names(ColumnRule.Drawn(trials, events), "later_estimate", "basis", "from_events", "from_trials", "to_events", "to_trials", "estimate", "lower", "upper", "few_counts"),
        Names(ColumnRule.Finer, "widened_lower", "widened_upper", "widened_method", "leaves_out_zero", "remark"));
}
