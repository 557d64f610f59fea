using System.Collections.Immutable;
using ScreenStats.Counting.Cubes;

namespace ScreenStats.Evaluation.Trends.Series;

/// <summary>Points in order of time, each period of the span once.</summary>
/// <param name="Period">What a point is.</param>
/// <param name="Points">The points.</param>
internal sealed record TrendSeries(ReportPeriod Period, ImmutableArray<TrendPoint> Points)
{
    /// <summary>The points that may be fitted; those without trials among them.</summary>
    public ImmutableArray<TrendPoint> Fitted => [.. Points.TakeWhile(point => point.Complete)];

    /// <summary>The whole of a basis by period.</summary>
    public static TrendSeries Of(TrendCube cube, TrendMeasure measure, ReportPeriod period, DataEnd end) =>
        Of(measure, period, end, Starts(cube, period).Select(part => (part.Start, part.End, cube.Sum(part.Start, part.End))));

    /// <summary>Some sites by ISO week.</summary>
    public static TrendSeries OfSites(TrendCube cube, TrendMeasure measure, DataEnd end, Func<string, bool> sites)
    {
        var sums = new TrendCounts[cube.Weeks];
        foreach (var (site, weeks) in cube.Sites)
        {
            if (!sites(site)) continue;
            foreach (var (week, counts) in weeks) sums[week].Add(counts);
        }

        return Of(measure, ReportPeriod.Week, end, sums.Select((counts, week) =>
            (cube.FirstMonday.AddDays(7 * week), Later(cube.FirstMonday, (7 * week) + 6), counts)));
    }

    /// <summary>The periods of the span.</summary>
    public static IEnumerable<(DateOnly Start, DateOnly End)> Starts(TrendCube cube, ReportPeriod period)
    {
        for (var start = period.Start(cube.First); ;)
        {
            // The calendar ends with the year 9999.
            var end = Later(start, period switch { ReportPeriod.Day => 0, ReportPeriod.Week => 6, _ => DateTime.DaysInMonth(start.Year, start.Month) - 1 });
            yield return (start, end);
            if (end >= cube.Last) yield break;
            start = end.AddDays(1);
        }
    }

    private static DateOnly Later(DateOnly day, int days) => DateOnly.FromDayNumber(Math.Min(day.DayNumber + days, DateOnly.MaxValue.DayNumber));

    private static TrendSeries Of(TrendMeasure measure, ReportPeriod period, DataEnd end, IEnumerable<(DateOnly Start, DateOnly End, TrendCounts Counts)> parts)
    {
        var points = ImmutableArray.CreateBuilder<TrendPoint>();
        var complete = true;
        foreach (var (start, last, counts) in parts)
        {
            // Positives that are confirmed may be known before those that are refuted: where some wait, the share of those that do not is no figure yet.
            complete &= end.Covers(last) && (measure != TrendMeasure.PredictiveValue || counts.Pending == 0);
            points.Add(new TrendPoint(start, last, complete, counts.Trials(measure), counts.Events(measure), counts.Pending));
        }

        return new TrendSeries(period, points.ToImmutable());
    }
}
