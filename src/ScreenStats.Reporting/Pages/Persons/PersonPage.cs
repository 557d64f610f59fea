using ScreenStats.Evaluation;

namespace ScreenStats.Reporting.Pages.Persons;

/// <summary>People tested and cases.</summary>
internal static class PersonPage
{
    /// <summary>The page.</summary>
    public static Page Of(Findings findings) => new(
        "persons", "How many people, how many cases", findings.Persons,
        "Only confirmed runs make cases: people whose positive run was never followed up are not among them.",
        "A case is a person's first confirmed run without a confirmatory positive in the days before that make one episode. " +
        "The rate is cases per 1,000 person-weeks, a person-week being a person with at least one counted run in an ISO week. Somebody tested at two sites counts at each.")
    {
        Tables = [.. findings.Persons.Tables.Select(TableViews.Whole)],
    };
}
