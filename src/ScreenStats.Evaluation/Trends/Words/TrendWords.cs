using ScreenStats.Counting.Cubes;
using ScreenStats.Evaluation.Trends.Changes;
using ScreenStats.Evaluation.Trends.Growth;

namespace ScreenStats.Evaluation.Trends.Words;

/// <summary>The words of trends.</summary>
internal static class TrendWords
{
    public static string Of(TrendMeasure measure) => measure switch
    {
        TrendMeasure.Positivity => "positivity",
        TrendMeasure.InvalidRuns => "invalid-runs",
        _ => "predictive-value",
    };

    public static string Of(TrendBasis basis) => basis switch
    {
        TrendBasis.All => "all",
        TrendBasis.WithoutFlaggedLots => "without-flagged-lots",
        TrendBasis.Routine => "routine",
        _ => "routine-without-flagged-lots",
    };

    public static string Of(GrowthSegment segment) => segment switch
    {
        GrowthSegment.WholeSpan => "whole-span",
        GrowthSegment.RecentEightWeeks => "recent-8-weeks",
        GrowthSegment.RecentFourWeeks => "recent-4-weeks",
        GrowthSegment.BetweenChanges => "between-changes",
        _ => "mean-of-segments",
    };

    public static string Of(GrowthDirection direction) => direction switch
    {
        GrowthDirection.Rises => "rises",
        GrowthDirection.Falls => "falls",
        _ => "cannot-tell",
    };

    public static string Of(TrendChangeKind kind) => kind switch
    {
        TrendChangeKind.Found => "found",
        TrendChangeKind.Dated => "dated",
        _ => "dated-elsewhere",
    };

    public static string Of(ReportPeriod period) => period switch
    {
        ReportPeriod.Day => "day",
        ReportPeriod.Week => "week",
        _ => "month",
    };

    /// <summary>What is followed, as the subject of a sentence in the singular.</summary>
    public static string Name(TrendMeasure measure) => measure switch
    {
        TrendMeasure.Positivity => "positivity",
        TrendMeasure.InvalidRuns => "the share of unusable runs",
        _ => "the share of positives that were confirmed",
    };

    /// <summary>The same at the beginning of a sentence.</summary>
    public static string Subject(TrendMeasure measure) => Name(measure) is var name ? char.ToUpperInvariant(name[0]) + name[1..] : "";

    /// <summary>Odds of what.</summary>
    public static string Odds(TrendMeasure measure) => measure switch
    {
        TrendMeasure.Positivity => "the odds of a positive test",
        TrendMeasure.InvalidRuns => "the odds of an unusable run",
        _ => "the odds that a positive is confirmed",
    };

    /// <summary>What grows: odds where the share may be near one, else the share itself.</summary>
    public static string Growing(TrendMeasure measure) => measure == TrendMeasure.PredictiveValue ? "its odds" : "it";

    /// <summary>The noun of a number of points: 1 week, 2 weeks.</summary>
    public static string Points(string period, long count) => count == 1 ? period : period + "s";
}
