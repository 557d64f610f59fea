using ScreenStats.Evaluation.Clusters;
using ScreenStats.Evaluation.Disclosure;
using ScreenStats.Reporting.Charts;

namespace ScreenStats.Reporting.Pages;

/// <summary>Proportions of the findings as points of charts. The limits drawn are the widened ones, as everywhere in the report.</summary>
internal static class ChartPoints
{
    /// <summary>The point of a proportion, or nothing where it is undefined.</summary>
    public static IEnumerable<ChartPoint> Of(ProportionFinding share, ReleaseDisclosure? disclosure, string name = "", DateOnly start = default, bool flagged = false)
    {
        if (disclosure is not null)
        {
            // Widened limits stand on finer counts: the plain ones, where the share itself may be seen.
            if (disclosure.Shows(share, nameof(share.Estimate)) && share is { Estimate: { } seen, Lower: { } from, Upper: { } to }) yield return new ChartPoint(share.Trials, seen, from, to, name, start, flagged);
        }
        else if (share.Estimate is { } estimate && share.WidenedLower is { } lower && share.WidenedUpper is { } upper)
        {
            yield return new ChartPoint(share.Trials, estimate, lower, upper, name, start, flagged);
        }
    }
}
