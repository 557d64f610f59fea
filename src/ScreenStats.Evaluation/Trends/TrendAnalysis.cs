using System.Collections.Immutable;
using System.Globalization;
using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Programs;
using ScreenStats.Counting.Programs.Surroundings;
using ScreenStats.Evaluation.Clusters;
using ScreenStats.Evaluation.Lots;
using ScreenStats.Evaluation.Model;
using ScreenStats.Evaluation.Trends.Changes;
using ScreenStats.Evaluation.Trends.Growth;
using ScreenStats.Evaluation.Trends.Series;
using ScreenStats.Evaluation.Trends.Weekdays;
using ScreenStats.Statistics;
using ScreenStats.Statistics.Clusters;
using ScreenStats.Statistics.Proportions;

namespace ScreenStats.Evaluation.Trends;

/// <summary>Follows positivity, unusable runs and predictive value over time.</summary>
internal static class TrendAnalysis
{
    public static TrendFindings Of(Tally tally, ProgramSettings settings, IReadOnlyCollection<LotFinding> lots)
    {
        var community = settings.Community;
        var empty = new TrendFindings
        {
            Series = [],
            Points = [],
            Growth = [],
            Changes = [],
            Weekdays = [],
            CommunityMeasure = community is null ? null : community.Measure == Counting.Programs.Surroundings.CommunityMeasure.Positivity ? "positivity" : "cases-per-100000-per-week",
            CommunitySource = community?.Source,
        };
        if (TrendCube.Of(tally, _ => true) is not { } all) return empty;
        var end = new DataEnd(all, settings);
        var (series, points) = (ImmutableArray.CreateBuilder<TrendSeriesFinding>(), ImmutableArray.CreateBuilder<TrendRow>());
        var period = tally.Cells.Period;
        while (period != ReportPeriod.Month && TrendSeries.Starts(all, period).Take(TrendRules.MostPeriods + 1).Count() > TrendRules.MostPeriods) period++;
        foreach (var basis in SeriesBasis.All(tally, all, Flagged(lots, Flag.Refuted), Flagged(lots, Flag.Invalid)))
        {
            var shown = TrendSeries.Of(basis.Cube, basis.Measure, period, end);
            var deflation = 1.0;
            series.Add(new TrendSeriesFinding
            {
                Key = basis.Key,
                Measure = basis.Measure,
                Basis = basis.Basis,
                Leads = basis.Leads,
                Trials = shown.Points.Sum(point => point.Trials),
                Events = shown.Points.Sum(point => point.Events),
                RunsLeftOut = basis.Cube.RunsLeftOut,
                Pending = shown.Points.Sum(point => point.Pending),
                Periods = shown.Points.Length,
                PeriodsWithoutTrials = shown.Points.Count(point => point.Trials == 0),
                PeriodsIncomplete = shown.Points.Count(point => !point.Complete),
                PeriodsAre = TrendWords.Of(period),
                FittedBy = TrendWords.Of(ReportPeriod.Week),
                FittedFrom = null,
                FittedTo = null,
                FittedPoints = 0,
                Deflation = deflation,
                DeflationFrom = "none",
                LevelDeviation = null,
                LevelDeviationUndefined = "not fitted",
            });
            foreach (var point in shown.Points) points.Add(Row(basis, point, deflation, community, settings.Report.Confidence));
        }

        return empty with { Series = series.ToImmutable(), Points = points.ToImmutable() };
    }

    private static HashSet<string> Flagged(IEnumerable<LotFinding> lots, Flag flag) => lots.Where(lot => lot.Flag.HasFlag(flag)).Select(lot => lot.Lot).ToHashSet(StringComparer.Ordinal);

    private static TrendRow Row(SeriesBasis basis, TrendPoint point, double deflation, CommunitySettings? community, double confidence)
    {
        var outside = Outside(community, point);
        return new TrendRow
        {
            Key = basis.Key + "|" + point.Start.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture),
            Measure = basis.Measure,
            Basis = basis.Basis,
            By = Grouping.Program,
            Level = "",
            Period = "",
            PeriodStart = point.Start,
            PeriodEnd = point.End,
            Complete = point.Complete,
            Trials = point.Trials,
            Events = point.Events,
            Pending = point.Pending,
            Share = Share(point.Events, point.Trials, deflation, confidence),
            Smooth = null,
            SmoothLower = null,
            SmoothUpper = null,
            SmoothUndefined = "not fitted",
            Spline = null,
            SplineLower = null,
            SplineUpper = null,
            SplineUndefined = "not fitted",
            Community = outside,
            CommunityUndefined = community is null || outside is not null ? null : "the program file states none for these days",
            Leads = basis.Leads,
        };
    }

    private static ProportionFinding Share(long events, long trials, double deflation, double confidence)
    {
        var plain = ProportionInterval.Wilson(events, trials, confidence);
        var widened = WidenedInterval.Wilson(events, trials, deflation, 0, confidence);
        return new ProportionFinding
        {
            Events = events,
            Trials = trials,
            Estimate = plain.Estimate,
            EstimateUndefined = plain.Reason?.Describe(),
            Lower = plain.Lower,
            Upper = plain.Upper,
            Method = plain.Method.Name(),
            Confidence = confidence,
            WidenedLower = widened.Lower,
            WidenedUpper = widened.Upper,
            DesignEffect = deflation,
            DesignEffectUndefined = null,
            ClusterLevel = null,
            Clusters = null,
        };
    }

    /// <summary>The mean over the days of a period, where every day has a value.</summary>
    private static double? Outside(CommunitySettings? community, TrendPoint point)
    {
        if (community is null) return null;
        var sum = 0.0;
        for (var day = point.Start; day <= point.End; day = day.AddDays(1))
        {
            if (community.On(day) is not { } value) return null;
            sum += value.Value;
        }

        return sum / (point.End.DayNumber - point.Start.DayNumber + 1);
    }
}
