using System.Collections.Immutable;
using System.Globalization;
using ScreenStats.Evaluation.Methods;
using ScreenStats.Statistics;
using ScreenStats.Statistics.Monitoring.Charts;
using ScreenStats.Statistics.Monitoring.RareEvents;
using ScreenStats.Statistics.Monitoring.Runs;

namespace ScreenStats.Evaluation.ControlCharts;

/// <summary>Charts of what lies between one refuted positive and the next.</summary>
internal static class BetweenCharts
{
    /// <summary>Both charts of one part of the program; nothing with too few refuted positives.</summary>
    /// <param name="by">What part it is.</param>
    /// <param name="level">Its name.</param>
    /// <param name="days">Its valid tests and refuted positives by day.</param>
    /// <param name="firstPending">From this day on more may yet be refuted; null for never.</param>
    public static IEnumerable<ControlChartFinding> Of(Grouping by, string level, SortedDictionary<DateOnly, (long Tests, long Refuted)> days, DateOnly? firstPending)
    {
        var events = Events(days);
        if (events.Count < ChartRules.FewestBetween) yield break;
        var tests = GapChart.Probability(events.Skip(1).Select((next, at) => next.Test - events[at].Test - 1), rules: RunRules.All);
        yield return Finding(tests, ChartKind.TestsBetween, by, level, events, firstPending);
        var time = TimeChart.Probability(events.Skip(1).Select((next, at) => next.Time - events[at].Time), rules: RunRules.All);
        yield return Finding(time, ChartKind.DaysBetween, by, level, events, firstPending);
    }

    /// <summary>
    /// The refuted positives of each day, spread evenly over its valid tests and over the day: within a day it is not known after how many tests
    /// one came, and tests of a morning would look like a burst by the clock.
    /// </summary>
    internal static List<(DateOnly Day, long Test, double Time)> Events(SortedDictionary<DateOnly, (long Tests, long Refuted)> days)
    {
        var events = new List<(DateOnly, long, double)>();
        long before = 0;
        foreach (var (day, (tests, refuted)) in days)
        {
            for (var at = 1L; at <= refuted; at++)
                events.Add((day, before + (at * (tests + 1) / (refuted + 1)), day.DayNumber + ((double)at / (refuted + 1))));
            before += tests;
        }

        return events;
    }

    private static ControlChartFinding Finding(
        ControlChart chart, ChartKind kind, Grouping by, string level, List<(DateOnly Day, long Test, double Time)> events, DateOnly? firstPending)
    {
        var undefined = chart.Reason?.Describe();
        var points = chart.Points.Select(point => Point(point, events[point.Index + 1].Day, firstPending)).ToImmutableArray();
        return new ControlChartFinding
        {
            Id = ShareCharts.Id(ChartMeasure.Refuted, kind, PointKind.RefutedPositive, by, level),
            Measure = ChartMeasure.Refuted,
            Kind = kind,
            By = by,
            Level = level,
            PointsAre = PointKind.RefutedPositive,
            Limits = kind == ChartKind.TestsBetween ? "geometric" : "exponential",
            Method = kind == ChartKind.TestsBetween ? MonitoringNotes.Geometric : MonitoringNotes.Exponential,
            Why = "refuted positives are rare here, so that what lies between them tells more than their share of a period",
            Centre = undefined is null ? chart.Centre : null,
            CentreUndefined = undefined,
            RunLengthUndefined = undefined ?? "not computed; that of each rule stands beside it",
            Points = points,
            Rules = undefined is not null ? [] : [.. RunRules.All.Select(rule => new RuleFinding(
                rule, points.Count(point => point.Signals.Contains(rule)), RunRuleLength.Normal([rule]).Value, null))],
        };
    }

    private static ChartPointFinding Point(ChartPoint point, DateOnly day, DateOnly? firstPending)
    {
        var above = point.Side == ChartSide.Above;
        var incomplete = day >= firstPending;
        ImmutableArray<RunRule> signals = !incomplete ? point.Signals : !above && point.Signals.Contains(RunRule.OutsideLimits) ? [RunRule.OutsideLimits] : [];
        return new ChartPointFinding(
            (point.Index + 2).ToString(CultureInfo.InvariantCulture), day, null, null, point.Observed!.Value, point.Value!.Value,
            point.Centre, point.Lower, point.Upper, point.Score, signals, above, incomplete);
    }
}
