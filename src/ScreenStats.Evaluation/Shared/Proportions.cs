using ScreenStats.Counting.Cubes;
using ScreenStats.Evaluation.Clusters;
using ScreenStats.Statistics.Clusters;
using ScreenStats.Statistics.Proportions;

namespace ScreenStats.Evaluation.Shared;

/// <summary>Proportions of counted runs, widened for people, sites and site-weeks.</summary>
internal static class Proportions
{
    /// <summary>A proportion over cells: which of their runs are trials, and which of these are events.</summary>
    public static ProportionFinding Of(
        IEnumerable<ScreenCell> cells, Func<Outcome, FollowUp, bool> trial, Func<Outcome, FollowUp, bool> happened,
        ClusterSums? persons, string undefined, double confidence)
    {
        var counter = new ClusterCounter();
        foreach (var cell in cells)
        {
            if (trial(cell.Outcome, cell.FollowUp)) counter.Add(cell.Site, cell.Day, cell.Runs, happened(cell.Outcome, cell.FollowUp) ? cell.Runs : 0);
        }

        return counter.Proportion(confidence, persons).Because(undefined);
    }

    /// <summary>The same finding with a reason of its own where it is undefined.</summary>
    public static ProportionFinding Because(this ProportionFinding finding, string undefined) =>
        finding.EstimateUndefined is null ? finding : finding with { EstimateUndefined = undefined };
}
