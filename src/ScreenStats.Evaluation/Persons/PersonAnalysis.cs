using ScreenStats.Counting.Cubes;
using ScreenStats.Evaluation.Clusters;

namespace ScreenStats.Evaluation.Persons;

/// <summary>People tested, people ever positive, and cases.</summary>
/// <remarks>
/// A person-week is a pair of a person and an ISO week with at least one counted run. The rate is cases per person-week, with
/// Wilson's limits (a week holds at most one case of a person while episodes last a week or longer) widened by the larger design
/// effect over sites and site-weeks. Person-weeks by site count a person at each site of the week.
/// </remarks>
internal static class PersonAnalysis
{
    public static PersonFindings Of(Tally tally, PersonSums persons, double confidence)
    {
        var cells = tally.Cells;
        var sites = cells.Screens.Select(cell => cell.Site).Distinct(StringComparer.Ordinal).Order(Levels.Order).ToList();
        var weeksOfSite = cells.Persons
            .Where(cell => cell is { Scope: PersonScope.SiteWeek, Measure: PersonMeasure.InvalidRuns })
            .ToLookup(cell => cell.Level, StringComparer.Ordinal);
        var casesBySite = cells.Cases.ToLookup(cell => cell.Site, StringComparer.Ordinal);

        ClusterCounter Counter(IEnumerable<PersonCell> weeks, IEnumerable<CaseCell> cases)
        {
            // Two cases of one person in one week need episodes shorter than a week; they count once here.
            var counter = new ClusterCounter();
            var found = cases.GroupBy(cell => (cell.Site, ReportPeriods.Monday(cell.Day))).ToDictionary(week => week.Key, week => week.Sum(cell => cell.Cases));
            foreach (var week in weeks)
            {
                var start = week.PeriodStart ?? default;
                counter.Add(week.Level, start, week.Persons, Math.Min(week.Persons, found.GetValueOrDefault((week.Level, start))));
            }

            return counter;
        }

        PersonRow Row(Grouping grouping, string level, PersonScope scope, long personWeeks, ClusterCounter counter, IReadOnlyCollection<CaseCell> cases)
        {
            var through = (Outcome outcome) => cases.Where(cell => cell.FoundThrough == outcome).Sum(cell => cell.Cases);
            return new PersonRow(
                level, grouping, level,
                persons.Cell(scope, PersonMeasure.InvalidRuns, level)?.Persons ?? 0,
                persons.Cell(scope, PersonMeasure.Positivity, level)?.PersonsWithEvent ?? 0,
                through(Outcome.Positive), through(Outcome.Inconclusive), personWeeks,
                ClusteredProportion.Of(
                    Math.Min(cases.Sum(cell => cell.Cases), personWeeks), personWeeks, confidence,
                    (ClusterLevel.Sites, counter.Sites()), (ClusterLevel.SiteWeeks, counter.SiteWeeks())));
        }

        var programWeeks = cells.Persons
            .Where(cell => cell is { Scope: PersonScope.Week, Measure: PersonMeasure.InvalidRuns })
            .Sum(cell => cell.Persons);
        var findings = new PersonFindings
        {
            Program = Row(Grouping.Program, "", PersonScope.Program, programWeeks, Counter(weeksOfSite.SelectMany(site => site), cells.Cases), cells.Cases),
            Sites = [.. sites.Select(site => Row(
                Grouping.Site, site, PersonScope.Site, weeksOfSite[site].Sum(week => week.Persons),
                Counter(weeksOfSite[site], casesBySite[site]), [.. casesBySite[site]]))],
            Tables = [],
            Sentences = [],
        };
        return findings with
        {
            Tables = [PersonTables.Persons([findings.Program, .. findings.Sites])],
            Sentences = PersonSentences.Of(findings, tally.Cells.HasConfirmatory),
        };
    }
}
