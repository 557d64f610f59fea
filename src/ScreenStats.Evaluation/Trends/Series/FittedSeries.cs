using System.Collections.Immutable;
using ScreenStats.Counting.Cubes;
using ScreenStats.Statistics.Trends;
using ScreenStats.Statistics.Trends.Series;

namespace ScreenStats.Evaluation.Trends.Series;

/// <summary>The complete points of a series as the fits take them: counts over their design effect, times in weeks.</summary>
/// <param name="Period">What a point is.</param>
/// <param name="Points">Complete points in order, those without trials among them.</param>
/// <param name="Deflation">What counts are divided by.</param>
internal sealed record FittedSeries(ReportPeriod Period, ImmutableArray<TrendPoint> Points, double Deflation)
{
    /// <summary>The day from which weeks are counted.</summary>
    public DateOnly Origin { get; } = Points.IsEmpty ? default : Points[0].Start;

    public int WithTrials => Points.Count(point => point.Trials > 0);

    public long Events => Points.Sum(point => point.Events);

    public long Trials => Points.Sum(point => point.Trials);

    /// <summary>The fewer of events and trials without one.</summary>
    public long FewerCounts => Math.Min(Events, Trials - Events);

    public static FittedSeries Of(TrendSeries series, double deflation)
    {
        // Points before the first and after the last trial say nothing and only lengthen the span.
        var points = series.Fitted;
        var (from, to) = (0, points.Length);
        while (from < to && points[from].Trials == 0) from++;
        while (to > from && points[to - 1].Trials == 0) to--;
        return new FittedSeries(series.Period, points[from..to], deflation);
    }

    /// <summary>The points of the last days.</summary>
    public FittedSeries Last(int days) =>
        Points.IsEmpty ? this : this with { Points = [.. Points.Where(point => point.Start > Points[^1].End.AddDays(-days))] };

    /// <summary>The middle of a point in weeks.</summary>
    public double Time(TrendPoint point) => point.WeeksSince(Origin);

    /// <summary>The day that holds a time.</summary>
    public DateOnly Day(double weeks) => DateOnly.FromDayNumber(Origin.DayNumber + (int)Math.Floor((7 * weeks) + 0.5));

    public CountPoint[] Counts() => [.. Points.Select(point => new CountPoint(Time(point), point.Events / Deflation, point.Trials / Deflation))];

    public TimedCount[] Timed() => [.. Points.Select(point => new TimedCount(Time(point), point.Events / Deflation, point.Trials / Deflation))];
}
