using System.Globalization;
using ScreenStats.Evaluation.Trends;
using ScreenStats.Evaluation.Trends.Growth;

namespace ScreenStats.Reporting.Pages.Trends;

/// <summary>Words of trends on pages and pictures.</summary>
internal static class TrendWording
{
    /// <summary>What is followed, at the beginning of a heading.</summary>
    public static string Title(TrendMeasure measure) => measure switch
    {
        TrendMeasure.InvalidRuns => "Unusable runs",
        TrendMeasure.PredictiveValue => "Share of positives that were confirmed",
        _ => "Positivity",
    };

    /// <summary>The name of a measure in the ids of pictures.</summary>
    public static string Id(TrendMeasure measure) => measure switch
    {
        TrendMeasure.InvalidRuns => "invalid-runs",
        TrendMeasure.PredictiveValue => "predictive-value",
        _ => "positivity",
    };

    /// <summary>What a basis leaves out, for a caption.</summary>
    public static string Left(TrendBasis basis) => basis switch
    {
        TrendBasis.WithoutFlaggedLots => ", without the runs of flagged lots",
        TrendBasis.Routine => ", without the runs taken because of an outbreak",
        TrendBasis.RoutineWithoutFlaggedLots => ", without the runs of flagged lots and those taken because of an outbreak",
        _ => "",
    };

    /// <summary>Growth with its limits, short enough to stand over its stretch; null where there is none.</summary>
    public static string? Growth(GrowthRow row)
    {
        if (row.GrowthPerWeek is not { Estimate: { } growth, Lower: { } lower, Upper: { } upper }) return null;
        var limits = $"({Signed(lower)} to {Signed(upper)})";
        return row.Direction == GrowthDirection.CannotTell ? $"no clear change {limits}" : $"{Signed(growth)} % a week {limits}";
    }

    /// <summary>Growth without its limits, for little room.</summary>
    public static string Brief(GrowthRow row) => row.Direction == GrowthDirection.CannotTell ? "no clear change" : $"{Signed(row.GrowthPerWeek.Estimate ?? 0)} % a week";

    /// <summary>A fraction as per cent with its sign; a whole number from 10 on.</summary>
    public static string Signed(double fraction)
    {
        var percent = fraction * 100;
        var text = Math.Abs(percent).ToString(Math.Abs(percent) >= 9.95 ? "#,0" : "0.0", CultureInfo.InvariantCulture);
        return (percent < 0 && text.Trim('0', '.').Length > 0 ? "\u2212" : percent > 0 && text.Trim('0', '.').Length > 0 ? "+" : "") + text;
    }
}
