using System.Globalization;
using ScreenStats.Evaluation.Methods;
using ScreenStats.Evaluation.Model;
using ScreenStats.Evaluation.Trends.Series;
using ScreenStats.Evaluation.Trends.Words;
using ScreenStats.Statistics;
using ScreenStats.Statistics.Trends.Growth;
using ScreenStats.Statistics.Trends.Series;
using ScreenStats.Statistics.Trends.SlopeChanges;

namespace ScreenStats.Evaluation.Trends.Growth;

/// <summary>How fast a rate grew, over stretches of time.</summary>
internal static class GrowthFits
{
    /// <summary>A straight line through a stretch.</summary>
    public static GrowthRow Straight(SeriesBasis basis, Grouping by, string level, FittedSeries stretch, GrowthSegment segment, double confidence)
    {
        var row = Empty(basis, by, level, stretch, segment);
        if (TooLittle(stretch) is { } reason) return Undefined(row, reason);
        if (row is { From: { } from, To: { } to } && to.DayNumber - from.DayNumber + 1 < TrendRules.FewestDays) return Undefined(row, $"fewer than {Say(TrendRules.FewestDays)} days were counted");
        var counts = stretch.Counts();
        var quasi = GrowthRate.Of(counts, new SeriesOptions { Limits = TrendLimits.Quasi, LeastDispersion = 1, Student = true, Confidence = confidence });
        var robust = stretch.WithTrials < TrendRules.FewestRobust ? null
            : GrowthRate.Of(counts, new SeriesOptions { Limits = TrendLimits.Robust, SmallSampleFactor = true, Student = true, Confidence = confidence });
        var fit = robust?.StandardError > quasi.StandardError ? robust : quasi;
        row = Of(row, fit.Growth, TrendNotes.Growth);
        return fit.Line is not { } line ? row : row with { RateFrom = Rate(line.At(stretch.Time(stretch.Points[0]))), RateTo = Rate(line.At(stretch.Time(stretch.Points[^1]))) };
    }

    /// <summary>Each site over the whole span.</summary>
    public static IEnumerable<GrowthRow> Sites(SeriesBasis basis, DataEnd end, double deflation, double confidence)
    {
        var sites = basis.Cube.Sites.Keys;
        foreach (var site in sites)
        {
            var stretch = FittedSeries.Of(TrendSeries.OfSites(basis.Cube, basis.Measure, end, one => one == site), deflation);
            var row = Straight(basis, Grouping.Site, site, stretch, GrowthSegment.WholeSpan, confidence);
            // As many are looked at as there are sites, in either direction.
            var strict = Straight(basis, Grouping.Site, site, stretch, GrowthSegment.WholeSpan, 1 - ((1 - confidence) / sites.Count));
            yield return row with { StandsOut = strict.Direction != GrowthDirection.CannotTell };
        }
    }

    /// <summary>The segments between changes of slope, and their mean; none where no change was found.</summary>
    public static IEnumerable<GrowthRow> Segments(SeriesBasis basis, FittedSeries series, BrokenLineFit fit)
    {
        if (fit.Number == 0 || fit.Reason is not null) yield break;
        foreach (var part in fit.Segments)
        {
            var row = Empty(basis, Grouping.Program, "", series, GrowthSegment.BetweenChanges) with { From = series.Day(part.From), To = series.Day(part.To), Points = part.Periods };
            row = Of(row with { Key = Key(row) }, Limited(part.Slope, part.Interval, fit.Confidence), TrendNotes.Segments);
            yield return row with { RateFrom = fit.RateAt(part.From).Value, RateTo = fit.RateAt(part.To).Value };
        }

        if (fit.MeanGrowth(fit.Segments[0].From, fit.Segments[^1].To) is { } mean)
            yield return Of(Empty(basis, Grouping.Program, "", series, GrowthSegment.MeanOfSegments), Limited(mean.Slope, mean.Interval, mean.Confidence), TrendNotes.Segments);
    }

    /// <summary>Why a line says nothing; null where it does.</summary>
    public static string? TooLittle(FittedSeries stretch) =>
        stretch.Trials == 0 ? "nothing was counted"
        : stretch.WithTrials < TrendRules.FewestPoints ? $"fewer than {Say(TrendRules.FewestPoints)} complete {TrendWords.Of(stretch.Period)}s were counted"
        : stretch.FewerCounts < TrendRules.FewestEvents ? $"fewer than {Say(TrendRules.FewestEvents)} events (or other trials) were counted" : null;

    private static OpenEstimate Limited(double slope, Interval limits, double confidence) => new(slope, limits.Lower, limits.Upper, "", confidence, null, null, null);

    private static double Rate(double logit) => 1 / (1 + Math.Exp(-logit));

    private static GrowthRow Of(GrowthRow row, OpenEstimate slope, string method)
    {
        static double? Change(double? value) => value is { } some && Math.Exp(some) - 1 is var change && double.IsFinite(change) ? change : null;
        var growth = new EstimateFinding(Change(slope.Value), slope.Value is null ? (slope.Reason ?? UndefinedReason.TooLarge).Describe() : null, Change(slope.Lower), Change(slope.Upper), method, slope.Confidence);
        var turnover = GrowthRate.Turnover(slope);
        EstimateFinding Days(TurnoverKind kind, string word)
        {
            if (row.Measure == TrendMeasure.PredictiveValue) return EstimateFinding.Undefined($"a share that may be near one does not {word}");
            if (turnover.Kind != kind) return EstimateFinding.Undefined(slope.Value is null ? "there is no growth" : kind == TurnoverKind.Doubling ? "it does not rise" : "it does not fall");
            var time = turnover.Time;
            return new EstimateFinding(Week(time.Value), time.Value is null ? (time.Reason ?? UndefinedReason.TooLarge).Describe() : null, Week(time.Lower), Week(time.Upper), method, slope.Confidence);
        }

        return row with
        {
            GrowthPerWeek = growth,
            Doubling = Days(TurnoverKind.Doubling, "double"),
            Halving = Days(TurnoverKind.Halving, "halve"),
            FastestDoubling = row.Measure == TrendMeasure.PredictiveValue ? null : Week(turnover.FastestDoubling),
            Direction = slope.Lower > 0 ? GrowthDirection.Rises : slope.Upper < 0 ? GrowthDirection.Falls : GrowthDirection.CannotTell,
        };

        static double? Week(double? weeks) => 7 * weeks;
    }

    private static GrowthRow Undefined(GrowthRow row, string reason) => row with
    {
        GrowthPerWeek = EstimateFinding.Undefined(reason), Doubling = EstimateFinding.Undefined(reason), Halving = EstimateFinding.Undefined(reason),
    };

    private static GrowthRow Empty(SeriesBasis basis, Grouping by, string level, FittedSeries stretch, GrowthSegment segment)
    {
        var nothing = EstimateFinding.Undefined("not fitted");
        var row = new GrowthRow
        {
            Key = "",
            Measure = basis.Measure,
            Basis = basis.Basis,
            By = by,
            Level = level,
            From = stretch.Points.IsEmpty ? null : stretch.Points[0].Start,
            To = stretch.Points.IsEmpty ? null : stretch.Points[^1].End,
            Segment = segment,
            Points = stretch.WithTrials,
            GrowthPerWeek = nothing,
            Doubling = nothing,
            Halving = nothing,
            FastestDoubling = null,
            RateFrom = null,
            RateTo = null,
            Direction = GrowthDirection.CannotTell,
            StandsOut = false,
            Leads = basis.Leads,
        };
        return row with { Key = Key(row) };
    }

    private static string Key(GrowthRow row) =>
        $"{TrendWords.Of(row.Measure)}|{TrendWords.Of(row.Basis)}|{row.Level}|{TrendWords.Of(row.Segment)}"
        + (row.Segment == GrowthSegment.BetweenChanges ? "|" + row.From?.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture) : "");

    private static string Say(long value) => value.ToString(CultureInfo.InvariantCulture);
}
