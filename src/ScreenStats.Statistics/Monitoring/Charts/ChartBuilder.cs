using System.Collections.Immutable;
using ScreenStats.Statistics.Monitoring.Runs;

namespace ScreenStats.Statistics.Monitoring.Charts;

/// <summary>What all charts have in common: the centre from the points or given, points without limits, the rules.</summary>
internal static class ChartBuilder
{
    public const double UsualTail = 0.00135;

    public static void Tail(double tailProbability)
    {
        if (!(tailProbability > 0 && tailProbability < 0.5))
            throw new ArgumentOutOfRangeException(nameof(tailProbability), tailProbability, "The chance of lying outside on a side must lie strictly between 0 and 0.5, for instance 0.00135.");
    }

    /// <summary>The proportion the limits stand around, or why there is none.</summary>
    public static (double? Centre, UndefinedReason? Reason) Centre(IReadOnlyList<Subgroup> subgroups, double? given)
    {
        if (given is { } centre)
        {
            Guard.Probability(centre, nameof(centre));
            return centre is 0 or 1 ? (centre, UndefinedReason.CentreAtTheEdge) : (centre, null);
        }

        double trials = 0, events = 0;
        var points = 0;
        foreach (var subgroup in subgroups)
        {
            trials += subgroup.Trials;
            events += subgroup.Events;
            if (subgroup.Trials > 0) points++;
        }

        if (points == 0) return (null, UndefinedReason.NoTrials);
        var own = events / trials;
        return (own, points == 1 ? UndefinedReason.FewerThanTwoPoints
            : events == 0 ? UndefinedReason.NoEvents
            : events == trials ? UndefinedReason.OnlyEvents
            : null);
    }

    /// <summary>The point as counted, with no limits yet.</summary>
    public static ChartPoint Plain(int index, Subgroup subgroup, UndefinedReason? reason)
    {
        double? rate = subgroup.Trials == 0 ? null : (double)subgroup.Events / subgroup.Trials;
        return new ChartPoint(index)
        {
            Events = subgroup.Events,
            Trials = subgroup.Trials,
            Observed = rate,
            Value = rate,
            Reason = rate is null ? UndefinedReason.NoTrials : reason,
        };
    }

    public static ImmutableArray<RunRule> Rules(IEnumerable<RunRule>? rules)
    {
        ImmutableArray<RunRule> sorted = rules is null ? [RunRule.OutsideLimits] : [.. rules.Distinct().Order()];
        foreach (var rule in sorted) _ = rule.Name();
        return sorted;
    }

    /// <summary>A chart whose points have values and no limits.</summary>
    public static ControlChart Undefined(string method, ChartLimits limits, IEnumerable<ChartPoint> points, ImmutableArray<RunRule> rules, double? centre, bool given, UndefinedReason reason) =>
        new(method, limits, [.. points], rules) { Centre = centre, CentreGiven = given, Reason = reason };

    /// <summary>Makes a chart of proportions; the point of each subgroup with trials comes from the function.</summary>
    public static ControlChart Proportions(
        string method,
        ChartLimits limits,
        IReadOnlyList<Subgroup> subgroups,
        double? given,
        IEnumerable<RunRule>? rules,
        Func<ChartPoint, double, ChartPoint> judge)
    {
        var looked = Rules(rules);
        var (centre, reason) = Centre(subgroups, given);
        var plain = subgroups.Select((subgroup, index) => Plain(index, subgroup, reason));
        if (reason is { } why) return Undefined(method, limits, plain, looked, centre, given is not null, why);
        var points = plain.Select(point => point.Value is null ? point : judge(point, centre!.Value)).ToList();
        return new ControlChart(method, limits, RuleEvaluation.Judge(points, looked), looked) { Centre = centre, CentreGiven = given is not null };
    }
}
