using System.Globalization;
using ScreenStats.Counting.Cubes;
using ScreenStats.Evaluation.Clusters;

namespace ScreenStats.Evaluation.Coverage;

/// <summary>People tested among people eligible, by site and ISO week.</summary>
internal static class CoverageAnalysis
{
    public static CoverageFindings Of(Tally tally, PersonSums persons)
    {
        var headcount = tally.Cells.Headcount
            .GroupBy(cell => (cell.Site, cell.Week))
            .OrderBy(week => week.Key.Site, Levels.Order).ThenBy(week => week.Key.Week)
            .ToDictionary(week => week.Key, week => week.Sum(cell => cell.Eligible));
        var weeks = headcount.Select(week => new CoverageRow(
            $"{week.Key.Site}|{week.Key.Week.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)}", Grouping.SiteAndPeriod, week.Key.Site, week.Key.Week,
            persons.Cell(PersonScope.SiteWeek, PersonMeasure.InvalidRuns, week.Key.Site, week.Key.Week)?.Persons ?? 0, week.Value)).ToList();
        var tested = tally.Cells.Persons.Where(cell => cell is { Scope: PersonScope.SiteWeek, Measure: PersonMeasure.InvalidRuns, Persons: > 0 });
        var any = weeks.Count > 0;
        var findings = new CoverageFindings
        {
            HasHeadcount = any,
            Program = any ? Sum("", Grouping.Program, "", weeks) : null,
            ProgramUndefined = any ? null : "there is no headcount",
            Sites = [.. weeks.GroupBy(week => week.Level, StringComparer.Ordinal).Select(site => Sum(site.Key, Grouping.Site, site.Key, site))],
            SiteWeeks = [.. weeks],
            SiteWeeksWithoutHeadcount = any ? tested.LongCount(cell => !headcount.ContainsKey((cell.Level, cell.PeriodStart ?? default))) : 0,
            SiteWeeksBeyondHeadcount = weeks.LongCount(week => week.Persons > week.Eligible),
            Tables = [],
            Sentences = [],
        };
        return findings with { Tables = [CoverageTables.Coverage(findings)], Sentences = CoverageSentences.Of(findings) };
    }

    private static CoverageRow Sum(string key, Grouping grouping, string level, IEnumerable<CoverageRow> weeks) =>
        weeks.Aggregate(new CoverageRow(key, grouping, level, null, 0, 0), (sum, week) => sum with { Persons = sum.Persons + week.Persons, Eligible = sum.Eligible + week.Eligible });
}
