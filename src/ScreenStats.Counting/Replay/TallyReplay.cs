using System.Collections.Immutable;
using System.Runtime.InteropServices;
using ScreenStats.Counting.Cubes;

namespace ScreenStats.Counting.Replay;

/// <summary>Takes a tally back to a day.</summary>
internal static class TallyReplay
{
    /// <exception cref="InvalidOperationException">There are follow-ups but no settlements.</exception>
    public static TallyAsOf AsOf(TallyCells cells, DateOnly day)
    {
        if (cells.Settlements.IsEmpty && cells.Notable.Any(run => run.FollowUp is not (FollowUp.None or FollowUp.Pending)))
        {
            throw new InvalidOperationException("The tally does not hold when its follow-ups became known, so it cannot be taken back to a day.");
        }

        // In the order in which they became known.
        var settled = cells.Settlements[..CountUpTo(cells.Settlements, day)];
        return new()
        {
            Day = day,
            HasConfirmatory = cells.HasConfirmatory,
            Screens = Screens(cells.Screens, settled, day),
            Operators = Operators(cells.Operators, settled, day),
            Notable = Notable(cells.Notable, settled, day),
            Settlements = settled,
            Controls = Upto(cells.Controls, static cell => cell.Day, day),
            Kits = Upto(cells.Kits, static cell => cell.Day, day),
            Conduct = Upto(cells.Conduct, static cell => cell.Day, day),
            Repeats = Upto(cells.Repeats, static cell => cell.Day, day),
            Headcount = Upto(cells.Headcount, static cell => cell.Week, day),
        };
    }

    private static ImmutableArray<ScreenCell> Screens(ImmutableArray<ScreenCell> cells, ImmutableArray<SettlementCell> settled, DateOnly day)
    {
        var known = new List<ScreenCell>(cells.Length + (2 * settled.Length));
        foreach (ref readonly var cell in cells.AsSpan())
        {
            if (cell.Day <= day) known.Add(cell with { FollowUp = AtFirst(cell.Outcome, cell.FollowUp) });
        }

        foreach (ref readonly var change in settled.AsSpan())
        {
            var cell = new ScreenCell(change.Site, change.Lot, change.Day, change.Specimen, change.Collection, change.Outcome, change.Before, -change.Runs, change.Occasion);
            known.Add(cell);
            known.Add(cell with { FollowUp = change.After, Runs = change.Runs });
        }

        return CellOrder.Canonical(Taken(known), CellOrder.Compare, static (a, b) => a with { Runs = a.Runs + b.Runs }, static cell => cell.Runs == 0);
    }

    private static ImmutableArray<OperatorCell> Operators(ImmutableArray<OperatorCell> cells, ImmutableArray<SettlementCell> settled, DateOnly day)
    {
        var known = new List<OperatorCell>(cells.Length + (2 * settled.Length));
        foreach (ref readonly var cell in cells.AsSpan())
        {
            if (cell.Day <= day) known.Add(cell with { FollowUp = AtFirst(cell.Outcome, cell.FollowUp) });
        }

        foreach (ref readonly var change in settled.AsSpan())
        {
            var cell = new OperatorCell(change.Operator, change.Site, change.Day, change.Outcome, change.Before, -change.Runs, change.Occasion);
            known.Add(cell);
            known.Add(cell with { FollowUp = change.After, Runs = change.Runs });
        }

        return CellOrder.Canonical(Taken(known), CellOrder.Compare, static (a, b) => a with { Runs = a.Runs + b.Runs }, static cell => cell.Runs == 0);
    }

    // Notable runs are single: changes are counted by run first, then each run is written as often as it is left.
    private static ImmutableArray<NotableRun> Notable(ImmutableArray<NotableRun> runs, ImmutableArray<SettlementCell> settled, DateOnly day)
    {
        var end = day.ToDateTime(TimeOnly.MaxValue);
        var known = ImmutableArray.CreateBuilder<NotableRun>(runs.Length);
        var counts = new Dictionary<NotableRun, long>();
        foreach (ref readonly var run in runs.AsSpan())
        {
            if (run.Minute > end) continue;
            if (run.FollowUp == FollowUp.None) known.Add(run);
            else Count(run with { FollowUp = FollowUp.Pending, MinutesToSpecimen = null }, 1);
        }

        foreach (ref readonly var change in settled.AsSpan())
        {
            var run = new NotableRun(change.Minute, change.DateOnly, change.Site, change.Lot, change.Kit, change.Operator, change.Specimen,
                change.Collection, change.Outcome, change.Before, change.MinutesBefore, null, change.Occasion);
            Count(run, -change.Runs);
            Count(run with { FollowUp = change.After, MinutesToSpecimen = change.MinutesAfter }, change.Runs);
        }

        foreach (var (run, count) in counts)
        {
            for (var i = 0L; i < count; i++) known.Add(run);
        }

        return CellOrder.Canonical(known.DrainToImmutable(), CellOrder.Compare, null, static _ => false);

        void Count(NotableRun run, long count) => CollectionsMarshal.GetValueRefOrAddDefault(counts, run, out _) += count;
    }

    private static FollowUp AtFirst(Outcome outcome, FollowUp followUp) =>
        followUp == FollowUp.None || outcome == Outcome.Negative ? FollowUp.None : FollowUp.Pending;

    private static ImmutableArray<T> Upto<T>(ImmutableArray<T> cells, Func<T, DateOnly> dayOf, DateOnly day) => [.. cells.Where(cell => dayOf(cell) <= day)];

    private static ImmutableArray<T> Taken<T>(List<T> cells) => [.. cells];

    private static int CountUpTo(ImmutableArray<SettlementCell> settlements, DateOnly day)
    {
        var (low, high) = (0, settlements.Length);
        while (low < high)
        {
            var middle = (low + high) >>> 1;
            if (settlements[middle].Known <= day) low = middle + 1;
            else high = middle;
        }

        return low;
    }
}
