using System.Globalization;
using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Programs.Surroundings;
using ScreenStats.Evaluation.Clusters;
using ScreenStats.Evaluation.Trends.Words;
using ScreenStats.Statistics;
using ScreenStats.Statistics.Clusters;

namespace ScreenStats.Evaluation.Trends.Series;

/// <summary>Makes the rows of a series, one for each period.</summary>
internal static class SeriesRows
{
    public static IEnumerable<TrendRow> Of(
        SeriesBasis basis, TrendSeries series, SmoothFits smooths, Deflation deflation, ReportPeriod reported, CommunitySettings? community, double confidence)
    {
        var period = series.Period == reported ? TrendWords.Of(reported) : $"{TrendWords.Of(series.Period)}-for-{TrendWords.Of(reported)}";
        for (var at = 0; at < series.Points.Length; at++)
        {
            var point = series.Points[at];
            var (smooth, spline) = (SmoothFits.At(smooths.Levels, smooths.LevelUndefined, at, point), SmoothFits.At(smooths.Splines, smooths.SplineUndefined, at, point));
            var outside = Outside(community, point);
            yield return new TrendRow
            {
                Key = basis.Key + "|" + point.Start.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture),
                Measure = basis.Measure,
                Basis = basis.Basis,
                By = Grouping.Program,
                Level = "",
                Period = period,
                PeriodStart = point.Start,
                PeriodEnd = point.End,
                Complete = point.Complete,
                Trials = point.Trials,
                Events = point.Events,
                Pending = point.Pending,
                Share = Share(point.Events, point.Trials, deflation, confidence),
                Smooth = smooth.Rate,
                SmoothLower = smooth.Lower,
                SmoothUpper = smooth.Upper,
                SmoothUndefined = smooth.Undefined,
                Spline = spline.Rate,
                SplineLower = spline.Lower,
                SplineUpper = spline.Upper,
                SplineUndefined = spline.Undefined,
                Community = outside,
                CommunityUndefined = community is null || outside is not null ? null : "the program file states none for all of these days",
                Leads = basis.Leads,
            };
        }
    }

    /// <summary>A share with Wilson's limits, and the same with its counts over the deflation.</summary>
    public static ProportionFinding Share(long events, long trials, Deflation deflation, double confidence) =>
        ClusteredProportion.Of(events, trials, confidence, WidenedInterval.Wilson(events, trials, deflation.Factor, 0, confidence)) with
        {
            DesignEffect = deflation.Factor,
            ClusterLevel = deflation.From switch { "persons" => ClusterLevel.Persons, "sites" => ClusterLevel.Sites, _ => null },
        };

    /// <summary>The mean over the days of a period, where every day has a value.</summary>
    private static double? Outside(CommunitySettings? community, TrendPoint point)
    {
        if (community is null) return null;
        // The first value and the mean distance from it: where all days have the same, it comes out as it was written.
        var (first, beyond) = (community.On(point.Start)?.Value ?? 0, 0.0);
        for (var day = point.Start; day <= point.End; day = day.AddDays(1))
        {
            if (community.On(day) is not { } value) return null;
            beyond += value.Value - first;
        }

        return first + (beyond / (point.End.DayNumber - point.Start.DayNumber + 1));
    }
}
