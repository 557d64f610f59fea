using System.Collections.Immutable;
using System.Globalization;
using ScreenStats.Counting.Cubes;

namespace ScreenStats.Evaluation.ControlCharts;

/// <summary>What a chart of shares is made of: points with trials, in order.</summary>
internal sealed record ChartSeries(ChartMeasure Measure, Grouping By, string Level, PointKind PointsAre, ImmutableArray<SeriesPoint> Points)
{
    public long Trials => Points.Sum(point => point.Trials);

    public long Events => Points.Sum(point => point.Events);

    /// <summary>Whether its points are in order of time.</summary>
    public bool InOrder => PointsAre is PointKind.Day or PointKind.Week or PointKind.Month;

    /// <summary>The rate to stand around; null takes it from the points.</summary>
    public double? Centre { get; init; }

    /// <summary>Where the centre is from: own, other-sites or unflagged.</summary>
    public string CentreFrom { get; init; } = "own";

    /// <summary>How far above the centre its worst point lies, or all of them together: cheap, to choose which charts to make.</summary>
    public double Excess
    {
        get
        {
            var rate = Centre ?? (Trials == 0 ? 0 : (double)Events / Trials);
            return Points.Select(point => Above(point.Events, point.Trials * rate)).Append(Above(Events, Trials * rate)).Max();

            static double Above(long seen, double expected) => expected > 0 && seen > expected ? (seen * Math.Log(seen / expected)) - (seen - expected) : 0;
        }
    }

    /// <summary>A part of the program by period; periods without trials are no points.</summary>
    public static ChartSeries ByPeriod(ChartCounts counts, ChartMeasure measure, Grouping by, string level, TestCounts[] of)
    {
        var points = ImmutableArray.CreateBuilder<SeriesPoint>();
        for (var at = 0; at < of.Length; at++)
        {
            if (of[at].Trials(measure) == 0) continue;
            points.Add(new SeriesPoint(
                counts.Starts[at].ToString("yyyy-MM-dd", CultureInfo.InvariantCulture), counts.Starts[at],
                of[at].Trials(measure), of[at].Events(measure), measure == ChartMeasure.Refuted && of[at].Pending > 0));
        }

        var are = counts.Period switch { ReportPeriod.Day => PointKind.Day, ReportPeriod.Week => PointKind.Week, _ => PointKind.Month };
        return new ChartSeries(measure, by, level, are, points.ToImmutable());
    }

    /// <summary>The sites side by side: refuted positives without those of flagged lots, around the rate of the sites that are not flagged.</summary>
    public static ChartSeries OfSites(ChartCounts counts, ChartMeasure measure, FlaggedPlaces flagged) => SideBySide(
        measure, PointKind.Site, flagged.Sites,
        counts.SitesAndLots.Where(both => measure == ChartMeasure.InvalidRuns || !flagged.Lots.Contains(both.Key.Lot))
            .GroupBy(both => both.Key.Site, both => new Part(both.Value.Counts, null), StringComparer.Ordinal));

    /// <summary>The lots side by side, by first use: unusable runs without those of flagged sites, around the rate of the lots that are not flagged. Runs without a lot are in no comparison.</summary>
    public static ChartSeries OfLots(ChartCounts counts, ChartMeasure measure, FlaggedPlaces flagged) => SideBySide(
        measure, PointKind.Lot, flagged.Lots,
        counts.SitesAndLots.Where(both => both.Key.Lot != Levels.None && (measure == ChartMeasure.Refuted || !flagged.Sites.Contains(both.Key.Site)))
            .GroupBy(both => both.Key.Lot, both => new Part(both.Value.Counts, both.Value.First), StringComparer.Ordinal));

    /// <summary>The operators side by side, around the rate at the sites that are not flagged.</summary>
    public static ChartSeries OfOperators(ChartCounts counts, ChartMeasure measure, FlaggedPlaces flagged) => SideBySide(
        measure, PointKind.Operator, counts.Operators.Keys.Where(one => flagged.Sites.Contains(one.Site)).Select(one => one.Operator).ToHashSet(StringComparer.Ordinal),
        counts.Operators.Where(one => one.Key.Operator != Levels.None).GroupBy(one => one.Key.Operator, one => new Part(one.Value, null), StringComparer.Ordinal));

    /// <summary>The rate to stand around; none where it would be 0 or 1.</summary>
    public ChartSeries Around(IEnumerable<SeriesPoint> points, string from)
    {
        long events = 0, trials = 0;
        foreach (var point in points) (events, trials) = (events + point.Events, trials + point.Trials);
        return events > 0 && events < trials ? this with { Centre = (double)events / trials, CentreFrom = from } : this;
    }

    private static ChartSeries SideBySide(ChartMeasure measure, PointKind are, IReadOnlySet<string> flagged, IEnumerable<IGrouping<string, Part>> levels)
    {
        var points = levels.Select(level => Summed(measure, level)).Where(point => point.Trials > 0)
            .OrderByDescending(point => point.Trials).ThenBy(point => point.Name, Levels.Order).Take(ChartRules.MostLevels)
            .OrderBy(point => point.Start).ThenBy(point => point.Name, Levels.Order);
        var series = new ChartSeries(measure, Grouping.Program, "", are, [.. points]);
        return series.Points.Any(point => flagged.Contains(point.Name)) ? series.Around(series.Points.Where(point => !flagged.Contains(point.Name)), "unflagged") : series;
    }

    private static SeriesPoint Summed(ChartMeasure measure, IGrouping<string, Part> level)
    {
        long trials = 0, events = 0;
        DateOnly? first = null;
        foreach (var part in level)
        {
            trials += part.Counts.Trials(measure);
            events += part.Counts.Events(measure);
            if (first is null || part.First < first) first = part.First;
        }

        return new SeriesPoint(level.Key, first, trials, events, false);
    }

    // A class, so that queries over it need no code of their own at the start.
    private sealed class Part(TestCounts counts, DateOnly? first)
    {
        public TestCounts Counts { get; } = counts;

        public DateOnly? First { get; } = first;
    }
}
