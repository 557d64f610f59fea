using System.Collections.Immutable;
using ScreenStats.Statistics;
using ScreenStats.Statistics.Trends.Smooths;
using ScreenStats.Statistics.Trends.Smooths.Splines;

namespace ScreenStats.Evaluation.Trends.Series;

/// <summary>The smooths through the complete periods of a series.</summary>
/// <param name="Levels">The wandering level of each complete period; empty where there is none.</param>
/// <param name="LevelUndefined">Why there is none.</param>
/// <param name="Deviation">Standard deviation of its steps.</param>
/// <param name="Splines">The spline of each complete period; empty where there is none.</param>
/// <param name="SplineUndefined">Why there is none.</param>
internal sealed record SmoothFits(
    ImmutableArray<(double Rate, Interval Band)> Levels, string? LevelUndefined, double? Deviation, ImmutableArray<(double Rate, Interval Band)> Splines, string? SplineUndefined)
{
    public static SmoothFits Of(TrendSeries series, double deflation, double confidence)
    {
        var points = series.Fitted;
        var counted = points.Count(point => point.Trials > 0);
        if (counted < TrendRules.FewestSmoothed)
        {
            var few = $"fewer than {TrendRules.FewestSmoothed.ToString(System.Globalization.CultureInfo.InvariantCulture)} complete periods were counted";
            return new SmoothFits([], few, null, [], few);
        }

        var level = BinomialLevel.Fit([.. points.Select((point, at) => new PeriodCount(at, point.Events / deflation, point.Trials / deflation))], new BinomialLevelOptions { Confidence = confidence });
        var spline = PenalisedSpline.Binomial(
            [.. points.Select((point, at) => new SplineCount(at, point.Events / deflation, point.Trials / deflation))],
            new SplineOptions { Segments = Math.Clamp(points.Length, 4, TrendRules.MostSegments), Confidence = confidence });
        return new SmoothFits(
            [.. level.Points.Select(point => (point.Smoothed.Rate, point.Smoothed.Band))], level.Reason?.Describe(), level.Sigma,
            [.. spline.Points.Select(point => (point.Rate, point.Band))], spline.Reason?.Describe());
    }

    /// <summary>The smooth of a period by its number; none where it is not complete.</summary>
    public static (double? Rate, double? Lower, double? Upper, string? Undefined) At(ImmutableArray<(double Rate, Interval Band)> smooth, string? undefined, int number) =>
        undefined is not null ? (null, null, null, undefined)
        : number < smooth.Length ? (smooth[number].Rate, smooth[number].Band.Lower, smooth[number].Band.Upper, null)
        : (null, null, null, "the period is not complete, so it is not fitted");
}
