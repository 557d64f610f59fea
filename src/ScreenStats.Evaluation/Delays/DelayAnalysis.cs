using System.Collections.Immutable;
using ScreenStats.Counting.Cubes;
using ScreenStats.Evaluation.Clusters;
using ScreenStats.Evaluation.Model;
using ScreenStats.Evaluation.Shared;
using ScreenStats.Statistics;
using ScreenStats.Statistics.Numerics;

namespace ScreenStats.Evaluation.Delays;

/// <summary>How long people waited for the specimen, and how long the specimen waited for its report.</summary>
internal static class DelayAnalysis
{
    private const double MinutesPerHour = 60;

    /// <summary>Computes the waiting times.</summary>
    /// <param name="tally">The tally.</param>
    /// <returns>The findings.</returns>
    /// <remarks>
    /// Median: the mean of the two middle values of an even number. 90th percentile: nearest rank. Both over the known values;
    /// specimens without a recorded report are counted beside them and would lengthen them. Reports are not split by site: the
    /// confirmatory export does not say where a person was screened.
    /// </remarks>
    public static DelayFindings Of(Tally tally)
    {
        var groups = ImmutableArray.CreateBuilder<DelayFinding>();
        foreach (var kind in (ReadOnlySpan<DelayKind>)[DelayKind.RunToSpecimen, DelayKind.SpecimenToReport])
        {
            var cells = tally.Cells.Delays.Where(cell => cell.Kind == kind).ToList();
            groups.Add(Of(kind, Grouping.Program, "", cells));
            if (kind != DelayKind.RunToSpecimen) continue;
            foreach (var site in cells.GroupBy(cell => cell.Site, StringComparer.Ordinal).OrderBy(site => site.Key, Levels.Order))
            {
                groups.Add(Of(kind, Grouping.Site, site.Key, site));
            }
        }

        var all = groups.ToImmutable();
        var run = all.First(finding => finding.Kind == DelayKind.RunToSpecimen);
        var report = all.First(finding => finding.Kind == DelayKind.SpecimenToReport);
        return new DelayFindings(run, report, [.. all.Where(finding => finding.Grouping != Grouping.Program)], DelayTables.Table(all), DelaySentences.Of(run, report));
    }

    private static DelayFinding Of(DelayKind kind, Grouping by, string level, IEnumerable<DelayCell> cells)
    {
        long resulted = 0, unresulted = 0, wholeDays = 0;
        var values = new List<(double Value, long Count)>();
        foreach (var cell in cells)
        {
            if (cell.Minutes is not { } minutes)
            {
                unresulted += cell.Count;
                continue;
            }

            resulted += cell.Count;
            if (cell.WholeDays) wholeDays += cell.Count;
            values.Add((minutes / MinutesPerHour, cell.Count));
        }

        return new DelayFinding(by == Grouping.Program ? LevelNames.Of(kind) : level, kind, by, level, resulted, unresulted, wholeDays, Percentile.Median(values),
            resulted > 0 ? null : UndefinedReason.NoValues.Describe(), Percentile.NearestRank(values, 0.9));
    }
}
