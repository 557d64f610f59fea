using System.Collections.Immutable;
using System.Globalization;
using ScreenStats.Evaluation;
using ScreenStats.Evaluation.Model;
using ScreenStats.Evaluation.Trends;
using ScreenStats.Evaluation.Trends.Changes;
using ScreenStats.Evaluation.Trends.Growth;
using ScreenStats.Reporting.Charts;
using ScreenStats.Reporting.Charts.Model;
using ScreenStats.Reporting.Charts.Trends;
using ScreenStats.Reporting.Charts.Words;

namespace ScreenStats.Reporting.Pages.Trends;

/// <summary>Pictures of trends: positivity, predictive value, and what else has something to say.</summary>
internal static class TrendFigures
{
    private const int Most = 3;

    /// <summary>A rate outside of up to so many times the highest share is drawn on the same scale.</summary>
    private const double Comparable = 1.5;

    /// <summary>Below this chance the days of the week are drawn.</summary>
    private const double DaysDiffer = 0.01;

    /// <summary>At most three.</summary>
    public static ImmutableArray<Chart> Of(Findings findings)
    {
        // Where small counts are hidden a place in a picture would show them.
        if (findings.Disclosure is not null) return [];
        var found = findings.Trends;
        var charts = new List<Chart>();
        foreach (var measure in (ReadOnlySpan<TrendMeasure>)[TrendMeasure.Positivity, TrendMeasure.PredictiveValue, TrendMeasure.InvalidRuns])
        {
            if (found.Leading(measure) is { } series && Draw(found, series) is { } chart) charts.Add(chart);
        }

        if (Weekdays(found) is { } days) charts.Insert(Math.Min(1, charts.Count), days);
        return [.. charts.Take(Most)];
    }

    private static Chart? Draw(TrendFindings found, TrendSeriesFinding series)
    {
        var rows = found.Points.Where(row => row.Measure == series.Measure && row.Basis == series.Basis && row.By == Grouping.Program).OrderBy(row => row.PeriodStart).ToArray();
        var dots = rows.Where(row => row.Share is { Estimate: not null, WidenedLower: not null, WidenedUpper: not null }).Select(row => new TrendDot(
            row.PeriodStart, row.PeriodEnd.AddDays(1), row.Share.Estimate!.Value, row.Share.WidenedLower!.Value, row.Share.WidenedUpper!.Value, row.Complete,
            series.Measure == TrendMeasure.PredictiveValue ? row.Pending : 0)).ToImmutableArray();
        if (dots.Length < 2) return null;
        var smooth = rows.Where(row => row is { Smooth: not null, SmoothLower: not null, SmoothUpper: not null })
            .Select(row => ((row.PeriodStart.DayNumber + row.PeriodEnd.DayNumber + 1) / 2.0, row.Smooth!.Value, row.SmoothLower!.Value, row.SmoothUpper!.Value)).ToImmutableArray();
        var segments = Segments(found, series);
        var changes = found.Changes.Where(row => row.Measure == series.Measure && row.Basis == series.Basis && (row.Kind is TrendChangeKind.Found or TrendChangeKind.Dated))
            .DistinctBy(row => (row.Kind, row.On, row.What)).ToArray();
        var title = TrendWording.Title(series.Measure);
        var frame = new ChartFrame(
            "trend-" + TrendWording.Id(series.Measure), $"{title} over time",
            (changes.Any(row => row.Kind == TrendChangeKind.Found) ? "The line turns where a change was found. What was dated near it is near in time, which is no proof of a cause." : smooth.Length > 1 ? "What counts is which way the line goes, within its band, and not single " + series.PeriodsAre + "s, whose limits are wider: one point is no trend." : "Limits of neighbours overlap: one point is no trend.")
            + $" {title} by {series.PeriodsAre}{TrendWording.Left(series.Basis)}.",
            Description(dots, smooth, segments, changes, series, title), "trends")
        {
            Quantity = series.Measure switch { TrendMeasure.Positivity => "positivity", TrendMeasure.InvalidRuns => "unusable runs", _ => "" },
        };
        return TrendChart.Of(frame, new TrendSeries(dots)
        {
            Period = (series.PeriodsAre, series.PeriodsAre + "s"),
            Smooth = smooth.Length > 1 ? new TrendLine(smooth) : null,
            Community = series.Measure == TrendMeasure.Positivity ? Community(found, rows) : null,
            Changes = [.. changes.Select(row => new TrendChange(
                row.On, row.What + (row.Sites.Length > 0 ? $" ({ChartText.Name(row.Sites)})" : ""), row.Kind == TrendChangeKind.Found ? row.OnLower ?? row.On : null, row.Kind == TrendChangeKind.Found ? row.OnUpper ?? row.On : null))],
            Segments = segments,
        });
    }

    /// <summary>The stretches between changes that were found; one over the whole span where none was.</summary>
    private static ImmutableArray<TrendSegment> Segments(TrendFindings found, TrendSeriesFinding series)
    {
        var rows = found.Growth.Where(row => row.Measure == series.Measure && row.Basis == series.Basis && row.By == Grouping.Program && row is { From: not null, To: not null }).ToArray();
        var between = rows.Where(row => row.Segment == GrowthSegment.BetweenChanges).OrderBy(row => row.From).ToArray();
        if (between.Length == 0) between = [.. rows.Where(row => row.Segment == GrowthSegment.WholeSpan)];
        return [.. between.Select(row => (Row: row, Words: TrendWording.Growth(row))).Where(one => one.Words is not null).Select(one => new TrendSegment(one.Row.From!.Value, one.Row.To!.Value, one.Words!, TrendWording.Brief(one.Row)))];
    }

    /// <summary>The rate outside. A share is drawn as it is; cases in 100,000 people are drawn so that their mean lies at the mean of the shares.</summary>
    private static TrendCommunity? Community(TrendFindings found, TrendRow[] rows)
    {
        var both = rows.Where(row => row is { Community: not null, Share.Estimate: not null }).ToArray();
        if (both.Length < 2) return null;
        var share = found.CommunityMeasure == "positivity";
        var (outside, own) = (both.Average(row => row.Community!.Value), both.Average(row => row.Share.Estimate!.Value));
        // A share that lies far above would flatten all the rest: it is drawn to scale too, and says so.
        var same = share && both.Max(row => row.Community!.Value) <= Comparable * both.Max(row => row.Share.Estimate!.Value);
        if (!same && (outside <= 0 || own <= 0)) return null;
        return new TrendCommunity(
            same ? "outside: positivity" : share ? $"outside: positivity, mean {Print(outside)}, not to scale" : string.Create(CultureInfo.InvariantCulture, $"outside: cases per 100,000 a week, mean {outside:#,0}"),
            [.. rows.Where(row => row.Community is not null).Select(row => (row.PeriodStart, row.Community!.Value))], same ? 1 : own / outside);
    }

    private static string Description(
        ImmutableArray<TrendDot> dots, ImmutableArray<(double Day, double Value, double Lower, double Upper)> smooth, ImmutableArray<TrendSegment> segments, TrendChangeRow[] changes, TrendSeriesFinding series, string title)
    {
        var text = $"{title} in {dots.Length.ToString("N0", CultureInfo.InvariantCulture)} periods from {Day(dots[0].Start)} to {Day(dots[^1].End.AddDays(-1))}.";
        if (smooth.Length > 1)
        {
            var (high, low) = (smooth.MaxBy(point => point.Value), smooth.MinBy(point => point.Value));
            text += $" The smooth line is highest around {Day(DateOnly.FromDayNumber((int)high.Day))} at {Print(high.Value)} and lowest around {Day(DateOnly.FromDayNumber((int)low.Day))} at {Print(low.Value)}.";
        }

        foreach (var segment in segments) text += $" {Day(segment.From)} to {Day(segment.To)}: {segment.Words}.";
        foreach (var change in changes.Take(6)) text += change.Kind == TrendChangeKind.Found ? $" Slope changes around {Day(change.On)}." : $" Marked: {ChartText.Name(change.What, 60)}, {Day(change.On)}.";
        if (series.PeriodsIncomplete > 0) text += string.Create(CultureInfo.InvariantCulture, $" The last {(series.PeriodsIncomplete == 1 ? "period is" : $"{series.PeriodsIncomplete} periods are")} not complete.");
        return text;
    }

    private static Chart? Weekdays(TrendFindings found)
    {
        var rows = found.Weekdays.Where(row => row is { Leads: true, Measure: TrendMeasure.Positivity }).ToArray();
        if (rows.Length < 2 || rows[0].PValue is not < DaysDiffer) return null;
        var days = rows.Where(row => row.Share is { Estimate: not null, Lower: not null, Upper: not null })
            .Select(row => new ChartPoint(row.Share.Trials, row.Share.Estimate!.Value, row.Share.Lower!.Value, row.Share.Upper!.Value, row.Weekday.Length > 3 ? row.Weekday[..3] : row.Weekday)).ToImmutableArray();
        var trials = days.Sum(day => day.Denominator);
        if (days.Length < 2 || trials == 0) return null;
        var (high, low) = (days.MaxBy(day => day.Estimate)!, days.MinBy(day => day.Estimate)!);
        var frame = new ChartFrame(
            "weekdays-positivity", "Positivity by day of the week", See.Highest(high, rows.First(row => row.Weekday.StartsWith(high.Name, StringComparison.Ordinal)).Share, "", new(Caption.OfThePage, Cell.Text(high.Name), Unit.Text), null, "all days") + "Positivity by day of the week. Who is tested on which day may differ as much as the days do.",
            $"Positivity of {days.Length.ToString(CultureInfo.InvariantCulture)} days of the week with limits. Highest: {high.Name} with {Print(high.Estimate)}. Lowest: {low.Name} with {Print(low.Estimate)}.", "weekdays") { Quantity = "positivity" };
        return WeekdayChart.Of(frame, days, days.Sum(day => day.Estimate * day.Denominator) / trials);
    }

    private static string Day(DateOnly day) => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    private static string Print(double value) => Rounding.Print(Cell.Number(value), Unit.Proportion);
}
