using System.Collections.Immutable;
using ScreenStats.Statistics;
using ScreenStats.Statistics.Trends.Smooths;
using ScreenStats.Statistics.Trends.Smooths.Splines;

namespace ScreenStats.Evaluation.Trends.Series;

/// <summary>The smooths through the complete periods of a series.</summary>
/// <param name="Levels">The wandering level by the number of the period; empty where there is none.</param>
/// <param name="LevelUndefined">Why there is none.</param>
/// <param name="Deviation">Standard deviation of its steps.</param>
/// <param name="Splines">The spline likewise; empty where there is none.</param>
/// <param name="SplineUndefined">Why there is none.</param>
internal sealed record SmoothFits(
    ImmutableDictionary<int, (double Rate, Interval Band)> Levels, string? LevelUndefined, double? Deviation, ImmutableDictionary<int, (double Rate, Interval Band)> Splines, string? SplineUndefined)
{
    private static ImmutableDictionary<int, (double Rate, Interval Band)> Nothing => ImmutableDictionary<int, (double Rate, Interval Band)>.Empty;

    public static SmoothFits Of(TrendSeries series, double deflation, double confidence)
    {
        var points = series.Fitted;
        var counted = points.Count(point => point.Trials > 0);
        if (counted < TrendRules.FewestSmoothed)
        {
            var few = $"fewer than {TrendRules.FewestSmoothed.ToString(System.Globalization.CultureInfo.InvariantCulture)} complete periods were counted";
            return new SmoothFits(Nothing, few, null, Nothing, few);
        }

        if (points.Length > TrendRules.MostSmoothed)
        {
            var reason = "the periods span too many years";
            return new SmoothFits(Nothing, reason, null, Nothing, reason);
        }

        // Periods in which nothing was counted are passed over: their level is known least, and costs most.
        PeriodCount[] counts = [.. points.Select((point, at) => new PeriodCount(at, point.Events / deflation, point.Trials / deflation)).Where(count => count.Trials > 0)];
        var level = BinomialLevel.Fit(counts, new BinomialLevelOptions { Confidence = confidence });
        // The most likely steps alone make bands that are too short; their deviation is what is told of the series.
        var bands = counts.Length > TrendRules.MostAveraged || level.Reason is not null ? level : BinomialLevel.Fit(counts, new BinomialLevelOptions { Confidence = confidence, AverageOverSigma = true });
        if (bands.Reason is not null) bands = level;
        var spline = PenalisedSpline.Binomial(
            [.. points.Select((point, at) => new SplineCount(at, point.Events / deflation, point.Trials / deflation)).Where(count => count.Trials > 0)],
            new SplineOptions { Segments = Math.Clamp(counted, 4, TrendRules.MostSegments), Confidence = confidence });
        return new SmoothFits(
            bands.Points.ToImmutableDictionary(point => (int)point.Count.Period, point => (point.Smoothed.Rate, point.Smoothed.Band)), level.Reason?.Describe(), level.Sigma,
            spline.Points.ToImmutableDictionary(point => (int)point.Count.At, point => (point.Rate, point.Band)), spline.Reason?.Describe());
    }

    /// <summary>The smooth of a period by its number; none where it is not complete, or nothing was counted in it.</summary>
    public static (double? Rate, double? Lower, double? Upper, string? Undefined) At(ImmutableDictionary<int, (double Rate, Interval Band)> smooth, string? undefined, int number, TrendPoint point) =>
        undefined is not null ? (null, null, null, undefined)
        : smooth.TryGetValue(number, out var found) ? (found.Rate, found.Band.Lower, found.Band.Upper, null)
        : (null, null, null, point.Complete ? "nothing was counted" : "the period is not complete, so it is not fitted");
}
