using ScreenStats.Evaluation.Clusters;
using ScreenStats.Statistics;
using ScreenStats.Statistics.Clusters;
using ScreenStats.Statistics.Comparison;

namespace ScreenStats.Evaluation.Kits;

/// <summary>Differences of two proportions, plain and within site-weeks.</summary>
internal static class Differences
{
    private static readonly string CrudeMethod = ContrastMethod.Newcombe.Name();

    /// <summary>The plain difference with Newcombe's limits, of each side's limits: the unwidened ones, and the widened ones.</summary>
    public static DifferenceFinding Crude(ProportionFinding first, ProportionFinding second)
    {
        if (first.Estimate is not { } a || second.Estimate is not { } b)
        {
            return new DifferenceFinding(null, first.EstimateUndefined ?? second.EstimateUndefined, null, null, null, null, CrudeMethod, first.Confidence,
                first.Events, first.Trials, second.Events, second.Trials, null);
        }

        var plain = ProportionDifference.SquareAndAdd(a, Limits(first.Lower, first.Upper), b, Limits(second.Lower, second.Upper));
        var widened = ProportionDifference.SquareAndAdd(a, Limits(first.WidenedLower, first.WidenedUpper), b, Limits(second.WidenedLower, second.WidenedUpper));
        return new DifferenceFinding(a - b, null, plain.Lower, plain.Upper, widened.Lower, widened.Upper, CrudeMethod, first.Confidence,
            first.Events, first.Trials, second.Events, second.Trials, null);
    }

    /// <summary>The difference within the site-weeks that have trials of both; its limits are widened for people.</summary>
    public static DifferenceFinding Within(ClusterCounter first, ClusterCounter second, ClusterSums? people, double confidence)
    {
        var seconds = second.Cells.ToDictionary(cell => cell.Key, cell => (cell.Trials, cell.Events));
        var strata = first.Cells.Where(cell => cell.Trials > 0 && seconds.TryGetValue(cell.Key, out var other) && other.Trials > 0)
            .OrderBy(cell => cell.Key.Site, StringComparer.Ordinal).ThenBy(cell => cell.Key.Week)
            .Select(cell => (FirstEvents: cell.Events, FirstTrials: cell.Trials, SecondEvents: seconds[cell.Key].Events, SecondTrials: seconds[cell.Key].Trials)).ToList();
        var effect = people is { } sums ? DesignEffect.Of(sums).Value : 1;
        var plain = StratifiedDifference.MantelHaenszel(strata, confidence);
        var widened = StratifiedDifference.MantelHaenszel(strata, confidence, effect);
        return new DifferenceFinding(
            plain.Value, plain.IsDefined ? null : "no site used both in the same week", plain.Lower, plain.Upper, widened.Lower, widened.Upper,
            StratifiedDifference.MethodName, confidence,
            strata.Sum(week => week.FirstEvents), strata.Sum(week => week.FirstTrials), strata.Sum(week => week.SecondEvents), strata.Sum(week => week.SecondTrials), strata.Count);
    }

    private static Interval Limits(double? lower, double? upper) => new(lower.GetValueOrDefault(), upper.GetValueOrDefault());
}
