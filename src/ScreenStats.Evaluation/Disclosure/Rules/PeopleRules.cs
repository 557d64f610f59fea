using ScreenStats.Evaluation.Disclosure.Counts;
using ScreenStats.Evaluation.Disclosure.Tables;
using static ScreenStats.Evaluation.Disclosure.Rules.RuleColumns;

namespace ScreenStats.Evaluation.Disclosure.Rules;

/// <summary>Tables of people and cases. Measures: c. are cases, v. people in site-weeks with a headcount.</summary>
internal static class PeopleRules
{
    /// <summary>People by their number of runs; each line is a level.</summary>
    public const string RunsPerPerson = "runs-per-person";

    /// <summary>Pairs of runs by the days between them; each line is a level.</summary>
    public const string DaysBetween = "days-between-runs";

    public static IEnumerable<TableRule> All()
    {
        yield return new("persons", row => row["by"] == "program", Part, Always(
            Level, Columns(("persons", "persons"), ("tested", "persons"), ("ever_positive", "ever_positive"), ("cases", "cases"), ("cases_through_positive", "c.positive"),
                ("cases_through_inconclusive", "c.inconclusive"), ("person_weeks", "person_weeks")),
            Share("person_weeks", "cases"), Names(ColumnRule.Drawn("cases", "person_weeks"), "cases_per_1000_person_weeks", "cases_per_thousand_person_weeks")));
        yield return new("yield", Every, _ => CountUnit.Program, Yield);
        yield return new("participation", Every, row => new CountUnit(row["measure"], row["value"], ""), row =>
        {
            var total = row["measure"] == RunsPerPerson ? "persons" : "gaps";
            return Together(Names(ColumnRule.Free, "measure", "value"), [("count", ColumnRule.Present(total)), ("share", ColumnRule.Drawn(total, Measure.Program(total)))]);
        }) { Optional = true };
        yield return new("coverage", Cut, Part, Always(
            Level, Columns(("persons", "v.persons"), ("eligible", "v.eligible")), Names(ColumnRule.Drawn("v.persons", "v.eligible"), "share")));
    }

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
        return Together(
            Names(ColumnRule.Free, "measure", "method", "confidence", "widened_method"),
            [("done", ColumnRule.Count(done)), ("found", ColumnRule.Count(found))],
            Names(ColumnRule.Drawn(done, found), "estimate", "lower", "upper"),
            Names(ColumnRule.Widened(done, found, ColumnRule.Shape.Ratio), "widened_lower", "widened_upper"));
    }
}
