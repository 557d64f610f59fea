using System.Collections.Immutable;
using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Programs.Cadence;
using ScreenStats.Counting.Programs.Costs;
using ScreenStats.Evaluation.Cadence;
using ScreenStats.Evaluation.Model;
using ScreenStats.Statistics.Economics.Yield.Rules;
using ScreenStats.Statistics.Proportions;

namespace ScreenStats.Evaluation.Worth.Lists;

/// <summary>The rule of frequency of the program file, replayed over the periods of the data: with all runs, and without those of flagged lots.</summary>
internal static class RuleRows
{
    public static RuleReplay Of(Tally tally, CostSettings settings, CadenceWork work, IReadOnlySet<string> flagged)
    {
        if (settings.Rules.IsEmpty || tally.FirstDay is not { } first || tally.LastDay is not { } last) return new RuleReplay([], null);
        var rule = new FrequencyRule([.. settings.Rules.Select(line => new FrequencyBand(line.Above ?? 0, Every(line.Option), beginsAbove: line.Above is not null))]);
        var period = tally.Cells.Period;
        var spans = new List<(DateOnly Start, int Days)>();
        for (var start = period.Start(first); start <= last;)
        {
            var next = Next(period, start);
            var (from, to) = (start < first ? first : start, next.AddDays(-1) > last ? last : next.AddDays(-1));
            spans.Add((start, to.DayNumber - from.DayNumber + 1));
            start = next;
        }

        var startsIn = Nearest(settings, work);
        ImmutableArray<WorthRuleReading> Replayed(Func<ScreenCell, bool> counts)
        {
            var found = Counts(tally.Cells.Screens.Where(counts), period);
            var periods = spans.ConvertAll(span => new YieldPeriod(found.GetValueOrDefault(span.Start).Positives, found.GetValueOrDefault(span.Start).Tests, span.Days));
            return [.. FrequencyHistory.Replay(rule, periods, startsIn, work.Known.Confidence).Select(decision => Reading(decision, periods[decision.Period], settings))];
        }

        var all = Replayed(_ => true);
        var lots = tally.Cells.Screens.Select(cell => cell.Lot).Where(flagged.Contains).Distinct(StringComparer.Ordinal).Count();
        ImmutableArray<WorthRuleReading> without = lots == 0 ? [] : Replayed(cell => !flagged.Contains(cell.Lot));
        return new RuleReplay(
            [.. all.Select((reading, place) => Row(spans[place], reading, lots == 0 ? null : without[place]))],
            lots == 0 ? null : new WorthRuleLots(all.Length, all.Zip(without).Count(pair => pair.First.Line > pair.Second.Line), all.Zip(without).Count(pair => pair.First.Line < pair.Second.Line), lots));
    }

    private static Dictionary<DateOnly, (long Tests, long Positives)> Counts(IEnumerable<ScreenCell> cells, ReportPeriod period)
    {
        var counts = new Dictionary<DateOnly, (long Tests, long Positives)>();
        foreach (var cell in cells)
        {
            if (cell.Outcome is not (Outcome.Positive or Outcome.Negative)) continue;
            var start = period.Start(cell.Day);
            var (tests, positives) = counts.GetValueOrDefault(start);
            counts[start] = (tests + cell.Runs, positives + (cell.Outcome == Outcome.Positive ? cell.Runs : 0));
        }

        return counts;
    }

    private static WorthRuleReading Reading(RuleDecision decision, YieldPeriod period, CostSettings settings) => new()
    {
        Tests = period.Screens,
        Positives = period.Found,
        Positivity = decision.Yield is { Estimate: { } share, Interval: { } limits }
            ? new EstimateFinding(share, null, limits.Lower, limits.Upper, IntervalMethod.Wilson.Name(), decision.Yield.Confidence)
            : EstimateFinding.Undefined("there are no valid tests"),
        InForce = settings.Rules[decision.InForce].Option.Name,
        Next = settings.Rules[decision.Next].Option.Name,
        IsSure = decision.IsSure,
        ScreensPerPerson = decision.ScreensPerPerson,
        Line = decision.InForce,
    };

    private static WorthRulePeriod Row((DateOnly Start, int Days) span, WorthRuleReading reading, WorthRuleReading? without) => new()
    {
        Period = span.Start,
        Days = span.Days,
        Tests = reading.Tests,
        Positives = reading.Positives,
        Positivity = reading.Positivity,
        InForce = reading.InForce,
        Next = reading.Next,
        IsSure = reading.IsSure,
        ScreensPerPerson = reading.ScreensPerPerson,
        WithoutFlaggedLots = without,
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
