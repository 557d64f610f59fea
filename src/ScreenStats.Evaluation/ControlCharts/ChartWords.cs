namespace ScreenStats.Evaluation.ControlCharts;

/// <summary>The words of control charts.</summary>
internal static class ChartWords
{
    public static string Of(ChartMeasure measure) => measure == ChartMeasure.InvalidRuns ? "invalid-runs" : "refuted";

    public static string Of(ChartKind kind) => kind switch
    {
        ChartKind.Share => "share",
        ChartKind.MovingAverage => "moving-average",
        ChartKind.TestsBetween => "tests-between",
        _ => "days-between",
    };

    public static string Of(PointKind points) => points switch
    {
        PointKind.Day => "day",
        PointKind.Week => "week",
        PointKind.Month => "month",
        PointKind.Site => "site",
        PointKind.Lot => "lot",
        PointKind.Operator => "operator",
        _ => "refuted-positive",
    };

    public static string One(PointKind points) => points == PointKind.RefutedPositive ? "stretch" : Of(points);

    public static string Many(PointKind points) => points == PointKind.RefutedPositive ? "stretches" : Of(points) + "s";

    /// <summary>What is counted, in the plural.</summary>
    public static string Counted(ChartMeasure measure) => measure == ChartMeasure.InvalidRuns ? "unusable runs" : "refuted positives";
}
