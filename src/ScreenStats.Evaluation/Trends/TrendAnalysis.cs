using System.Collections.Immutable;
using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Programs;
using ScreenStats.Counting.Programs.Surroundings;
using ScreenStats.Evaluation.Lots;
using ScreenStats.Evaluation.Trends.Changes;
using ScreenStats.Evaluation.Trends.Growth;
using ScreenStats.Evaluation.Trends.Series;
using ScreenStats.Evaluation.Trends.Weekdays;
using ScreenStats.Evaluation.Trends.Words;

namespace ScreenStats.Evaluation.Trends;

/// <summary>Follows positivity, unusable runs and predictive value over time.</summary>
internal sealed class TrendAnalysis
{
    private readonly ImmutableArray<TrendSeriesFinding>.Builder series = ImmutableArray.CreateBuilder<TrendSeriesFinding>();
    private readonly ImmutableArray<TrendRow>.Builder points = ImmutableArray.CreateBuilder<TrendRow>();
    private readonly ImmutableArray<GrowthRow>.Builder growth = ImmutableArray.CreateBuilder<GrowthRow>();
    private readonly ImmutableArray<TrendChangeRow>.Builder changes = ImmutableArray.CreateBuilder<TrendChangeRow>();
    private readonly ImmutableArray<WeekdayRow>.Builder weekdays = ImmutableArray.CreateBuilder<WeekdayRow>();
    private readonly Tally tally;
    private readonly ProgramSettings settings;
    private readonly TrendCube all;
    private readonly DataEnd end;

    private TrendAnalysis(Tally tally, ProgramSettings settings, TrendCube all)
    {
        this.tally = tally;
        this.settings = settings;
        this.all = all;
        end = new DataEnd(all, settings);
    }

    private double Confidence => settings.Report.Confidence;

    public static TrendFindings Of(Tally tally, ProgramSettings settings, IReadOnlyCollection<LotFinding> lots)
    {
        var empty = new TrendFindings
        {
            Series = [],
            Points = [],
            Growth = [],
            Changes = [],
            Weekdays = [],
            CommunityMeasure = settings.Community?.Measure switch { null => null, CommunityMeasure.Positivity => "positivity", _ => "cases-per-100000-per-week" },
            CommunitySource = settings.Community?.Source,
        };
        if (TrendCube.Of(tally, _ => true) is not { } all) return empty;
        var analysis = new TrendAnalysis(tally, settings, all);
        foreach (var basis in SeriesBasis.All(tally, all, Flagged(lots, Flag.Refuted), Flagged(lots, Flag.Invalid))) analysis.Add(basis);
        return empty with
        {
            Series = analysis.series.ToImmutable(),
            Points = analysis.points.ToImmutable(),
            Growth = analysis.growth.ToImmutable(),
            Changes = analysis.changes.ToImmutable(),
            Weekdays = analysis.weekdays.ToImmutable(),
        };
    }

    private static HashSet<string> Flagged(IEnumerable<LotFinding> lots, Flag flag) => lots.Where(lot => lot.Flag.HasFlag(flag)).Select(lot => lot.Lot).ToHashSet(StringComparer.Ordinal);

    private void Add(SeriesBasis basis)
    {
        var shown = TrendSeries.Of(basis.Cube, basis.Measure, Shown(), end);
        var deflation = Deflation.Of(basis, tally, end);
        var smooths = SmoothFits.Of(shown, deflation.Factor, Confidence);
        points.AddRange(SeriesRows.Of(basis, shown, smooths, deflation, tally.Cells.Period, settings.Community, Confidence));

        var fitted = Fitted(basis, deflation.Factor);
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
            PeriodsSmoothed = shown.Fitted.Count(point => point.Trials > 0),
            PeriodsAre = TrendWords.Of(shown.Period),
            FittedBy = TrendWords.Of(fitted.Period),
            FittedFrom = fitted.Points.IsEmpty ? null : fitted.Points[0].Start,
            FittedTo = fitted.Points.IsEmpty ? null : fitted.Points[^1].End,
            FittedPoints = fitted.WithTrials,
            Deflation = deflation.Factor,
            DeflationFrom = deflation.From,
            LevelDeviation = smooths.Deviation,
            LevelDeviationUndefined = smooths.LevelUndefined,
        });
        AddGrowth(basis, fitted, deflation.Factor);
        changes.AddRange(DatedChanges.Of(basis, settings.Changes, end, deflation.Factor, Confidence));
        weekdays.AddRange(WeekdayFits.Of(basis, tally, deflation, Confidence));
    }

    private void AddGrowth(SeriesBasis basis, FittedSeries fitted, double deflation)
    {
        GrowthRow Straight(FittedSeries stretch, GrowthSegment segment) => GrowthFits.Straight(basis, Grouping.Program, "", stretch, segment, Confidence);
        growth.Add(Straight(fitted, GrowthSegment.WholeSpan));
        if (fitted.Period != ReportPeriod.Day)
        {
            var weeks = fitted.Period == ReportPeriod.Week ? fitted : FittedSeries.Of(TrendSeries.Of(basis.Cube, basis.Measure, ReportPeriod.Week, end), deflation);
            if (weeks.Points.Length > 8) growth.Add(Straight(weeks.Last(56), GrowthSegment.RecentEightWeeks));
            if (weeks.Points.Length > 4)
            {
                // Four weeks leave no scatter to judge by: their days do, and each weekday is among them four times.
                var days = FittedSeries.Of(TrendSeries.Of(basis.Cube, basis.Measure, ReportPeriod.Day, end), deflation);
                growth.Add(Straight(days with { Points = [.. days.Points.Where(day => day.Start > weeks.Points[^1].End.AddDays(-28) && day.End <= weeks.Points[^1].End)] }, GrowthSegment.RecentFourWeeks));
            }
        }

        if (FoundChanges.Choose(fitted, Confidence) is { } choice)
        {
            growth.AddRange(GrowthFits.Segments(basis, fitted, choice.Fit));
            changes.AddRange(FoundChanges.Rows(basis, fitted, choice));
        }

        if (!basis.Leads || basis.Cube.Sites.Count is < 2 or > TrendRules.MostSites) return;
        growth.AddRange(GrowthFits.Sites(basis, end, deflation, Confidence));
    }

    /// <summary>The reporting period, or the next longer one where there would be too many.</summary>
    private ReportPeriod Shown()
    {
        var period = tally.Cells.Period;
        while (period != ReportPeriod.Month && TrendSeries.Starts(all, period).Count() > TrendRules.MostPeriods) period++;
        return period;
    }

    /// <summary>Growth is taken over weeks, so that days of the week are nothing to it; over days where there are few weeks, over months where there are very many.</summary>
    private FittedSeries Fitted(SeriesBasis basis, double deflation)
    {
        var period = all.Weeks < TrendRules.FewestWeeks ? ReportPeriod.Day : all.Weeks > TrendRules.MostFitted ? ReportPeriod.Month : ReportPeriod.Week;
        return FittedSeries.Of(TrendSeries.Of(basis.Cube, basis.Measure, period, end), deflation);
    }
}
