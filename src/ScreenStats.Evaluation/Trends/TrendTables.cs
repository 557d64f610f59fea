using System.Collections.Immutable;
using ScreenStats.Evaluation.Methods;
using ScreenStats.Evaluation.Model;
using ScreenStats.Evaluation.Shared;
using ScreenStats.Evaluation.Trends.Changes;
using ScreenStats.Evaluation.Trends.Growth;
using ScreenStats.Evaluation.Trends.Weekdays;
using ScreenStats.Evaluation.Trends.Words;

namespace ScreenStats.Evaluation.Trends;

/// <summary>The tables of trends.</summary>
internal static class TrendTables
{
    private const string Followed = "positivity: positive of valid tests; invalid-runs: inconclusive and invalid of all runs; predictive-value: confirmed of the positive runs that were confirmed or refuted.";
    private const string Stands = "all: every counted run; without-flagged-lots: without the lots flagged for what is followed; routine: without runs taken because of an outbreak; routine-without-flagged-lots: without either.";

    public static Table<TrendRow> Points(TrendFindings findings) => new(
        "trends",
        "Trends",
        "One row for each period of each series: what was counted, Wilson's limits, the same widened for clusters, and two smooths through the complete periods with their bands. " +
        "A period that is not complete is shown and never fitted. Bands hold the rate of each period, not of all at once.",
        [
            new("measure", "Followed", Unit.Text, Followed, row => Cell.Text(TrendWords.Of(row.Measure))),
            new("basis", "Basis", Unit.Text, Stands, row => Cell.Text(TrendWords.Of(row.Basis))),
            LevelColumns.By<TrendRow>(row => row.By),
            LevelColumns.Level<TrendRow>(row => row.Level),
            new("period_start", "Period from", Unit.Date, "First day of the period.", row => Cell.Date(row.PeriodStart)),
            new("period_end", "To", Unit.Date, "Last day of the period.", row => Cell.Date(row.PeriodEnd)),
            new("complete", "Complete", Unit.Text, "no while the period may still get runs or, for predictive value, its positives or those before wait for a result.", row => Cell.Text(row.Complete ? "yes" : "no")),
            new("trials", "Trials", Unit.Count, "What the share is taken of.", row => Cell.Count(row.Trials)),
            new("events", "Events", Unit.Count, "What is counted of them.", row => Cell.Count(row.Events)),
            new("pending", "Pending", Unit.Count, "Positive runs of the period that still wait for a result.", row => Cell.Count(row.Pending)),
            new("estimate", "Share", Unit.Proportion, "Events divided by trials.", row => Number(row.Share.Estimate, row.Share.EstimateUndefined)),
            new("lower", "Lower", Unit.Proportion, "Wilson's lower limit, as if all trials were independent.", row => Number(row.Share.Lower, row.Share.EstimateUndefined)),
            new("upper", "Upper", Unit.Proportion, "Wilson's upper limit, as if all trials were independent.", row => Number(row.Share.Upper, row.Share.EstimateUndefined)),
            new("smooth", "Smooth", Unit.Proportion, "The level that wanders from period to period, given every complete period.", row => Number(row.Smooth, row.SmoothUndefined)) { Method = TrendNotes.LocalLevel },
            new("smooth_lower", "Smooth, lower", Unit.Proportion, "Lower limit of its band.", row => Number(row.SmoothLower, row.SmoothUndefined)) { Method = TrendNotes.LocalLevel },
            new("smooth_upper", "Smooth, upper", Unit.Proportion, "Upper limit of its band.", row => Number(row.SmoothUpper, row.SmoothUndefined)) { Method = TrendNotes.LocalLevel },
            new("spline", "Spline", Unit.Proportion, "A smooth curve through the periods.", row => Number(row.Spline, row.SplineUndefined)) { Method = TrendNotes.Spline },
            new("spline_lower", "Spline, lower", Unit.Proportion, "Lower limit of its band.", row => Number(row.SplineLower, row.SplineUndefined)) { Method = TrendNotes.Spline },
            new("spline_upper", "Spline, upper", Unit.Proportion, "Upper limit of its band.", row => Number(row.SplineUpper, row.SplineUndefined)) { Method = TrendNotes.Spline },
            new("community", "Outside", findings.CommunityMeasure == "positivity" ? Unit.Proportion : Unit.Ratio, "The external rate that the program file states, mean over the days of the period" + (findings.CommunityMeasure == "cases-per-100000-per-week" ? ": cases in 100,000 people in a week." : "."),
                row => row.Community is { } value ? Cell.Number(value) : row.CommunityUndefined is { } reason ? Cell.Undefined(reason) : Cell.Empty) { Method = MethodNames.Stated },
            new("method", "Method", Unit.Text, "Method of the limits of the share.", row => Cell.Text(row.Share.Method)),
            new("confidence", "Confidence", Unit.Proportion, "Confidence of all limits of the row.", row => Cell.Number(row.Share.Confidence)),
            new("widened_lower", "Lower, widened", Unit.Proportion, "Lower limit widened because trials come in clusters.", row => Number(row.Share.WidenedLower, row.Share.EstimateUndefined)),
            new("widened_upper", "Upper, widened", Unit.Proportion, "Upper limit widened because trials come in clusters.", row => Number(row.Share.WidenedUpper, row.Share.EstimateUndefined)),
            new("widened_method", "Method, widened", Unit.Text, "Method of the widened limits.", row => Cell.Text(Statistics.Clusters.WidenedInterval.MethodName)),
            new("leads", "Leads", Unit.Text, "yes for the series that is told first.", row => Leads(row.Leads)),
            new("period", "Period", Unit.Text, "What a period is; week-for-day, month-for-day or month-for-week where there would be more than 300.", row => Cell.Text(row.Period)),
        ],
        findings.Points);

    public static Table<GrowthRow> Growth(ImmutableArray<GrowthRow> rows) => new(
        "growth",
        "Growth",
        "How fast each rate grew, over which stretch of complete weeks, and the days to double or to halve. Growth is the part by which the odds rise each week; for rare events that is the part by which the rate does.",
        [
            new("measure", "Followed", Unit.Text, Followed, row => Cell.Text(TrendWords.Of(row.Measure))),
            new("basis", "Basis", Unit.Text, Stands, row => Cell.Text(TrendWords.Of(row.Basis))),
            LevelColumns.By<GrowthRow>(row => row.By),
            LevelColumns.Level<GrowthRow>(row => row.Level),
            new("from", "From", Unit.Date, "First day.", row => Cell.Date(row.From)),
            new("to", "To", Unit.Date, "Last day.", row => Cell.Date(row.To)),
            new("segment", "Stretch", Unit.Text, "whole-span; recent-8-weeks, recent-4-weeks: the last complete weeks; between-changes: from one change of slope that was found to the next; mean-of-segments: these weighted by their lengths.", row => Cell.Text(TrendWords.Of(row.Segment))),
            new("points", "Points", Unit.Text, "Weeks (or days, or months) with trials that were fitted.", row => Cell.Text(Say(row.Points))),
            new("growth_per_week", "Growth a week", Unit.Proportion, "The part by which the odds grow each week; below zero they fall.", row => Number(row.GrowthPerWeek.Estimate, row.GrowthPerWeek.EstimateUndefined)),
            new("lower", "Lower", Unit.Proportion, "Lower limit of the growth.", row => Number(row.GrowthPerWeek.Lower, row.GrowthPerWeek.EstimateUndefined)),
            new("upper", "Upper", Unit.Proportion, "Upper limit of the growth.", row => Number(row.GrowthPerWeek.Upper, row.GrowthPerWeek.EstimateUndefined)),
            new("doubling_days", "Days to double", Unit.Days, "Days in which it doubles at that growth.", row => Number(row.Doubling.Estimate, row.Doubling.EstimateUndefined)),
            new("doubling_lower", "Days to double, lower", Unit.Days, "The least days.", row => Limit(row.Doubling.Lower, row.Doubling)),
            new("doubling_upper", "Days to double, upper", Unit.Days, "The most days; undefined where the limits of the growth hold no change.", row => Limit(row.Doubling.Upper, row.Doubling)),
            new("direction", "Direction", Unit.Text, "rises or falls where both limits are on one side of no change; else cannot-tell.", row => Cell.Text(TrendWords.Of(row.Direction))),
            new("method", "Method", Unit.Text, "Method of the growth.", row => row.GrowthPerWeek.Method is { } method ? Cell.Text(method) : Cell.Empty),
            new("confidence", "Confidence", Unit.Proportion, "Confidence of all limits of the row.", row => row.GrowthPerWeek.Confidence is { } confidence ? Cell.Number(confidence) : Cell.Empty),
            new("halving_days", "Days to halve", Unit.Days, "Days in which it halves at that growth.", row => Number(row.Halving.Estimate, row.Halving.EstimateUndefined)),
            new("halving_lower", "Days to halve, lower", Unit.Days, "The least days.", row => Limit(row.Halving.Lower, row.Halving)),
            new("halving_upper", "Days to halve, upper", Unit.Days, "The most days; undefined where the limits of the growth hold no change.", row => Limit(row.Halving.Upper, row.Halving)),
            new("rate_from", "Rate at the first", Unit.Proportion, "The rate at the first point by the line.", row => Number(row.RateFrom, row.GrowthPerWeek.EstimateUndefined)),
            new("rate_to", "Rate at the last", Unit.Proportion, "The rate at the last point by the line.", row => Number(row.RateTo, row.GrowthPerWeek.EstimateUndefined)),
            new("leads", "Leads", Unit.Text, "yes for the series that is told first.", row => Leads(row.Leads)),
        ],
        rows);

    public static Table<TrendChangeRow> Changes(ImmutableArray<TrendChangeRow> rows) => new(
        "trend-changes",
        "Changes of the trends",
        "Changes of slope that were found in the counts, and the changes that the program file dates, each fitted as an interrupted series. That a rate changed when something was changed does not say that it changed because of it.",
        [
            new("measure", "Followed", Unit.Text, Followed, row => Cell.Text(TrendWords.Of(row.Measure))),
            new("basis", "Basis", Unit.Text, Stands, row => Cell.Text(TrendWords.Of(row.Basis))),
            new("kind", "Kind", Unit.Text, "found: in the counts; dated: by the program file; dated-elsewhere: the same day at the sites that the change did not touch.", row => Cell.Text(TrendWords.Of(row.Kind))),
            new("on", "On", Unit.Date, "The day of the change.", row => Cell.Date(row.On)),
            new("on_lower", "Earliest", Unit.Date, "Lower limit of the day of a change that was found.", row => Cell.Date(row.OnLower)) { Method = TrendNotes.Segments },
            new("on_upper", "Latest", Unit.Date, "Upper limit of the day of a change that was found.", row => Cell.Date(row.OnUpper)) { Method = TrendNotes.Segments },
            new("what", "What", Unit.Text, "What changed, in the program file's words.", row => row.What.Length == 0 ? Cell.Empty : Cell.Text(row.What)),
            new("sites", "Sites", Unit.Text, "The sites that it is about; empty for all.", row => row.Sites.Length == 0 ? Cell.Empty : Cell.Text(row.Sites)),
            new("level_ratio", "Level, ratio", Unit.Ratio, "For a dated change, how many times as high the odds are just after as just before.", row => Number(row.LevelRatio.Estimate, row.LevelRatio.EstimateUndefined)),
            new("level_lower", "Level, lower", Unit.Ratio, "Lower limit of that ratio.", row => Number(row.LevelRatio.Lower, row.LevelRatio.EstimateUndefined)),
            new("level_upper", "Level, upper", Unit.Ratio, "Upper limit of that ratio.", row => Number(row.LevelRatio.Upper, row.LevelRatio.EstimateUndefined)),
            new("slope_before", "Growth a week before", Unit.Proportion, "Growth for each week before the change.", row => Number(row.SlopeBefore.Estimate, row.SlopeBefore.EstimateUndefined)),
            new("slope_after", "Growth a week after", Unit.Proportion, "Growth for each week after it.", row => Number(row.SlopeAfter.Estimate, row.SlopeAfter.EstimateUndefined)),
            new("p_value", "Chance of as much", Unit.PValue, "The chance of as much where nothing changed: of the slope for a found change, of the level for a dated one.", row => Number(row.PValue, row.PValueUndefined)),
            new("method", "Method", Unit.Text, "Method of the row.", row => row.Method is { } method ? Cell.Text(method) : Cell.Empty),
            new("slope_ratio", "Slope, ratio", Unit.Ratio, "How many times as high the weekly factor is after as before.", row => Number(row.SlopeRatio.Estimate, row.SlopeRatio.EstimateUndefined)),
            new("slope_lower", "Slope, lower", Unit.Ratio, "Lower limit of that ratio.", row => Number(row.SlopeRatio.Lower, row.SlopeRatio.EstimateUndefined)),
            new("slope_upper", "Slope, upper", Unit.Ratio, "Upper limit of that ratio.", row => Number(row.SlopeRatio.Upper, row.SlopeRatio.EstimateUndefined)),
            new("leads", "Leads", Unit.Text, "yes for the series that is told first.", row => Leads(row.Leads)),
        ],
        rows);

    public static Table<WeekdayRow> Weekdays(ImmutableArray<WeekdayRow> rows) => new(
        "weekdays",
        "Days of the week",
        "Each day of the week against the others, within the weeks of each site, so that neither a rise nor a site that is tested on Mondays makes a pattern. Who is tested on which day may differ as much as the days do.",
        [
            new("measure", "Followed", Unit.Text, Followed, row => Cell.Text(TrendWords.Of(row.Measure))),
            new("basis", "Basis", Unit.Text, Stands, row => Cell.Text(TrendWords.Of(row.Basis))),
            new("weekday", "Day of the week", Unit.Text, "Monday to Sunday; days without runs are left out.", row => Cell.Text(row.Weekday)),
            new("trials", "Trials", Unit.Count, "What the share is taken of.", row => Cell.Count(row.Trials)),
            new("events", "Events", Unit.Count, "What is counted of them.", row => Cell.Count(row.Events)),
            new("estimate", "Share", Unit.Proportion, "Events divided by trials.", row => Number(row.Share.Estimate, row.Share.EstimateUndefined)),
            new("lower", "Lower", Unit.Proportion, "Lower limit, as if all trials were independent.", row => Number(row.Share.Lower, row.Share.EstimateUndefined)),
            new("upper", "Upper", Unit.Proportion, "Upper limit, as if all trials were independent.", row => Number(row.Share.Upper, row.Share.EstimateUndefined)),
            new("odds_ratio", "Odds, ratio", Unit.Ratio, "Odds on this day against the mean of the days, within the weeks of each site.", row => Number(row.OddsRatio, row.OddsRatioUndefined)) { Method = TrendNotes.Weekdays },
            new("ratio_lower", "Ratio, lower", Unit.Ratio, "Lower limit of that ratio.", row => Number(row.RatioLower, row.OddsRatioUndefined)) { Method = TrendNotes.Weekdays },
            new("ratio_upper", "Ratio, upper", Unit.Ratio, "Upper limit of that ratio.", row => Number(row.RatioUpper, row.OddsRatioUndefined)) { Method = TrendNotes.Weekdays },
            new("p_value", "Chance of as much", Unit.PValue, "The chance of days that differ as much where they do not, of all days together.", row => Number(row.PValue, row.PValueUndefined)) { Method = TrendNotes.Weekdays },
            new("method", "Method", Unit.Text, "Method of the limits of the share.", row => Cell.Text(row.Share.Method)),
            new("within", "Within", Unit.Text, "Within what days are compared: site-weeks, or weeks where there are very many sites.", row => Cell.Text(row.Within)),
            new("leads", "Leads", Unit.Text, "yes for the series that is told first.", row => Leads(row.Leads)),
        ],
        rows);

    private static Cell Number(double? value, string? undefined) => Cell.NumberOr(value, undefined ?? "nothing was counted");

    private static Cell Limit(double? value, EstimateFinding of) => Cell.NumberOr(value, of.EstimateUndefined ?? "the limits of the growth hold no change");

    private static Cell Leads(bool leads) => leads ? Cell.Text("yes") : Cell.Empty;

    private static string Say(int value) => value.ToString(System.Globalization.CultureInfo.InvariantCulture);
}
