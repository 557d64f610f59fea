using ScreenStats.Evaluation.Clusters;
using ScreenStats.Reporting.Charts;

namespace ScreenStats.Reporting.Pages;

/// <summary>Proportions of the findings as points of charts. The limits drawn are the widened ones, as everywhere in the report.</summary>
internal static class ChartPoints
{
    /// <summary>The point of a proportion, or nothing where it is undefined.</summary>
    public static IEnumerable<ChartPoint> Of(ProportionFinding share, string name = "", DateOnly start = default, bool flagged = false)
    {
        if (share.Estimate is { } estimate && share.WidenedLower is { } lower && share.WidenedUpper is { } upper)
        {
            yield return new ChartPoint(share.Trials, estimate, lower, upper, name, start, flagged);
        }
    }
}
