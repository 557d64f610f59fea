using System.Collections.Immutable;
using ScreenStats.Evaluation.Clusters;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Persons;

internal static class PersonTables
{
    public static Table<PersonRow> Persons(ImmutableArray<PersonRow> rows) => new(
        "persons",
        "People and cases",
        "People, not runs. A case is a person's first confirmed run with no confirmatory positive in the episode before it. A person-week is a " +
        "person and an ISO week with at least one counted run; a person tested at two sites counts at each. estimate is cases per person-week.",
        [
            new("by", "By", Unit.Text, "By what the program is broken down.", row => Cell.Text(LevelNames.Of(row.Grouping))),
            new("level", "Level", Unit.Text, "The site; empty for the whole program.", row => row.Level.Length == 0 ? Cell.Empty : Cell.Text(row.Level)),
            new("persons", "People tested", Unit.Count, "People with at least one counted run.", row => Cell.Count(row.Tested)),
            new("ever_positive", "Ever positive", Unit.Count, "People with at least one positive run.", row => Cell.Count(row.EverPositive)),
            new("cases", "Cases", Unit.Count, "All cases.", row => Cell.Count(row.Cases)),
            new("cases_through_positive", "Found through a positive", Unit.Count, "Cases found through a positive run.", row => Cell.Count(row.CasesThroughPositive)),
            new("cases_through_inconclusive", "Found through an inconclusive", Unit.Count, "Cases found through an inconclusive run.", row => Cell.Count(row.CasesThroughInconclusive)),
            new("person_weeks", "Person-weeks", Unit.Count, "Pairs of a person and an ISO week with at least one counted run.", row => Cell.Count(row.PersonWeeks)),
            new("cases_per_1000_person_weeks", "Cases per 1,000 person-weeks", Unit.PerThousand, "A thousand times cases divided by person-weeks.", row => Cell.NumberOr(row.CasesPerThousandPersonWeeks, row.CasesPerThousandPersonWeeksUndefined ?? "")) { Method = Methods.MethodNames.Rate },
            .. ShareColumns.For<PersonRow>(row => row.CaseShare),
        ],
        rows);
}
