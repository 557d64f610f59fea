using System.Collections.Immutable;
using ScreenStats.Statistics.Monitoring.Charts;

namespace ScreenStats.Statistics.Monitoring.Runs;

/// <summary>Looks for the run rules along the points of a chart.</summary>
internal static class RuleEvaluation
{
    public static ImmutableArray<ChartPoint> Judge(IReadOnlyList<ChartPoint> points, ImmutableArray<RunRule> rules)
    {
        var judged = points.ToArray();
        var seen = new List<ChartPoint>(judged.Length);
        for (var i = 0; i < judged.Length; i++)
        {
            if (judged[i].Score is null) continue;
            seen.Add(judged[i]);
            var fired = rules.Where(rule => Fires(rule, seen)).ToImmutableArray();
            if (fired.Length > 0) judged[i] = judged[i] with { Signals = fired };
        }

        return [.. judged];
    }

    /// <summary>Whether a rule is completed by the last point.</summary>
    private static bool Fires(RunRule rule, List<ChartPoint> seen) => rule switch
    {
        RunRule.OutsideLimits => Outside(seen[^1]),
        RunRule.TwoOfThreeFar => Among(seen, 2, 3, 2),
        RunRule.FourOfFiveOff => Among(seen, 4, 5, 1),
        _ => Among(seen, 8, 8, -1),
    };

    private static bool Among(List<ChartPoint> seen, int wanted, int window, double distance)
    {
        var side = seen[^1].Side;
        if (side == ChartSide.On || !Beyond(seen[^1], distance)) return false;
        var count = 0;
        for (var i = Math.Max(0, seen.Count - window); i < seen.Count; i++)
        {
            if (seen[i].Side == side && Beyond(seen[i], distance)) count++;
        }

        return count >= wanted;
    }

    private static bool Beyond(ChartPoint point, double distance) => new Standing(point.Side, point.Score!.Value).Beyond(distance);

    // A point on a limit is inside, whatever the last bit of the limit.
    private static bool Outside(ChartPoint point)
    {
        var slack = 1e-12 * Math.Abs(point.Value!.Value);
        return point.Value - slack > point.Upper || point.Value + slack < point.Lower;
    }
}
