using System.Collections.Immutable;
using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Programs.Cadence;
using ScreenStats.Counting.Programs.Costs;
using ScreenStats.Evaluation.Cadence;
using ScreenStats.Evaluation.Model;
using ScreenStats.Statistics.Economics.Yield.Rules;
using ScreenStats.Statistics.Proportions;

namespace ScreenStats.Evaluation.Worth.Lists;

/// <summary>The rule of frequency of the program file, replayed over the periods of the data.</summary>
internal static class RuleRows
{
    public static ImmutableArray<WorthRulePeriod> Of(Tally tally, CostSettings settings, CadenceWork work)
    {
        if (settings.Rules.IsEmpty || tally.FirstDay is not { } first || tally.LastDay is not { } last) return [];
        var rule = new FrequencyRule([.. settings.Rules.Select(line => new FrequencyBand(line.Above ?? 0, Every(line.Option), beginsAbove: line.Above is not null))]);
        var period = tally.Cells.Period;
        var counts = new Dictionary<DateOnly, (long Tests, long Positives)>();
        foreach (var cell in tally.Cells.Screens)
        {
            if (cell.Outcome is not (Outcome.Positive or Outcome.Negative)) continue;
            var start = period.Start(cell.Day);
            var (tests, positives) = counts.GetValueOrDefault(start);
            counts[start] = (tests + cell.Runs, positives + (cell.Outcome == Outcome.Positive ? cell.Runs : 0));
        }

        var periods = new List<(DateOnly Start, int Days, long Tests, long Positives)>();
        for (var start = period.Start(first); start <= last;)
        {
            var next = Next(period, start);
            var (from, to) = (start < first ? first : start, next.AddDays(-1) > last ? last : next.AddDays(-1));
            var (tests, positives) = counts.GetValueOrDefault(start);
            periods.Add((start, to.DayNumber - from.DayNumber + 1, tests, positives));
            start = next;
        }

        var decisions = FrequencyHistory.Replay(rule, [.. periods.Select(one => new YieldPeriod(one.Positives, one.Tests, one.Days))], Nearest(settings, work), work.Known.Confidence);
        return [.. decisions.Select(decision => Row(decision, periods[decision.Period], settings))];
    }

    private static WorthRulePeriod Row(RuleDecision decision, (DateOnly Start, int Days, long Tests, long Positives) period, CostSettings settings) => new()
    {
        Period = period.Start,
        Days = period.Days,
        Tests = period.Tests,
        Positives = period.Positives,
        Positivity = decision.Yield is { Estimate: { } share, Interval: { } limits }
            ? new EstimateFinding(share, null, limits.Lower, limits.Upper, IntervalMethod.Wilson.Name(), decision.Yield.Confidence)
            : EstimateFinding.Undefined("there are no valid tests"),
        InForce = settings.Rules[decision.InForce].Option.Name,
        Next = settings.Rules[decision.Next].Option.Name,
        IsSure = decision.IsSure,
        ScreensPerPerson = decision.ScreensPerPerson,
    };

    // The line nearest to what was done when the data begin, by the ratio of screens.
    private static int Nearest(CostSettings settings, CadenceWork work)
    {
        if (work.Options.AsDone is not { } done) return 0;
        return Enumerable.Range(0, settings.Rules.Length)
            .MinBy(line => settings.Rules[line].Option.ScreensPerDay is > 0 and var rate ? Math.Abs(Math.Log(rate / done.ScreensPerDay)) : double.MaxValue);
    }

    private static double? Every(CadenceOptionSettings option) => option.ScreensPerDay > 0 ? 1 / option.ScreensPerDay : null;

    private static DateOnly Next(ReportPeriod period, DateOnly start) => period switch
    {
        ReportPeriod.Day => start.AddDays(1),
        ReportPeriod.Week => start.AddDays(7),
        _ => start.AddMonths(1),
    };
}
