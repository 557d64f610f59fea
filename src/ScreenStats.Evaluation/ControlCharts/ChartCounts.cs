using System.Runtime.InteropServices;
using ScreenStats.Counting.Cubes;

namespace ScreenStats.Evaluation.ControlCharts;

/// <summary>The counts that control charts are made of, in one pass over the cubes.</summary>
internal sealed class ChartCounts
{
    private ChartCounts(ReportPeriod period, DateOnly[] starts)
    {
        Period = period;
        Starts = starts;
        Program = new TestCounts[starts.Length];
    }

    /// <summary>The reporting period, or the next longer one where there would be too many points.</summary>
    public ReportPeriod Period { get; }

    /// <summary>First day of each period of the span.</summary>
    public DateOnly[] Starts { get; }

    /// <summary>The whole program by period.</summary>
    public TestCounts[] Program { get; }

    /// <summary>Each site by period.</summary>
    public SortedDictionary<string, TestCounts[]> Sites { get; } = new(Levels.Order);

    /// <summary>Each site with each lot over the whole span, with the first day.</summary>
    public Dictionary<(string Site, string Lot), (TestCounts Counts, DateOnly First)> SitesAndLots { get; } = [];

    /// <summary>Each operator at each site over the whole span.</summary>
    public Dictionary<(string Operator, string Site), TestCounts> Operators { get; } = [];

    /// <summary>The first day with a positive run that still waits for a result; null where none does.</summary>
    public DateOnly? FirstPending { get; private set; }

    public static ChartCounts Of(Tally tally)
    {
        if (tally.FirstDay is not { } first || tally.LastDay is not { } last) return new ChartCounts(tally.Cells.Period, []);
        var period = tally.Cells.Period;
        var starts = All(period, first, last);
        while (starts.Length > ChartRules.MostPeriods && period != ReportPeriod.Month) starts = All(++period, first, last);
        var counts = new ChartCounts(period, starts);
        counts.Count(tally.Cells, first, last);
        return counts;
    }

    /// <summary>Valid tests and refuted positives of each day of one part of the program.</summary>
    public static Dictionary<string, SortedDictionary<DateOnly, (long Tests, long Refuted)>> Daily(
        Tally tally, Func<ScreenCell, string> place, IReadOnlySet<string> wanted)
    {
        var days = new Dictionary<string, SortedDictionary<DateOnly, (long Tests, long Refuted)>>(StringComparer.Ordinal);
        foreach (var cell in tally.Cells.Screens)
        {
            if (cell.Outcome is not (Outcome.Negative or Outcome.Positive) || !wanted.Contains(place(cell))) continue;
            ref var of = ref CollectionsMarshal.GetValueRefOrAddDefault(days, place(cell), out _);
            of ??= [];
            var (tests, refuted) = of.GetValueOrDefault(cell.Day);
            of[cell.Day] = (tests + cell.Runs, refuted + (Refuted(cell) ? cell.Runs : 0));
        }

        return days;
    }

    private static bool Refuted(ScreenCell cell) => cell is { Outcome: Outcome.Positive, FollowUp: FollowUp.Refuted };

    private void Count(TallyCells cells, DateOnly first, DateOnly last)
    {
        var index = new int[last.DayNumber - first.DayNumber + 1];
        for (int day = 0, at = 0; day < index.Length; day++)
        {
            while (at + 1 < Starts.Length && Starts[at + 1].DayNumber <= first.DayNumber + day) at++;
            index[day] = at;
        }

        foreach (var cell in cells.Screens)
        {
            var at = index[cell.Day.DayNumber - first.DayNumber];
            if (!Sites.TryGetValue(cell.Site, out var site)) Sites.Add(cell.Site, site = new TestCounts[Starts.Length]);
            ref var both = ref CollectionsMarshal.GetValueRefOrAddDefault(SitesAndLots, (cell.Site, cell.Lot), out var known);
            if (!known || cell.Day < both.First) both.First = cell.Day;
            both.Counts.Add(cell.Outcome, cell.FollowUp, cell.Runs);
            Program[at].Add(cell.Outcome, cell.FollowUp, cell.Runs);
            site[at].Add(cell.Outcome, cell.FollowUp, cell.Runs);
            if (cell is { Outcome: Outcome.Positive, FollowUp: FollowUp.Pending } && !(cell.Day >= FirstPending)) FirstPending = cell.Day;
        }

        foreach (var cell in cells.Operators)
        {
            ref var counts = ref CollectionsMarshal.GetValueRefOrAddDefault(Operators, (cell.Operator, cell.Site), out _);
            counts.Add(cell.Outcome, cell.FollowUp, cell.Runs);
        }
    }

    private static DateOnly[] All(ReportPeriod period, DateOnly first, DateOnly last)
    {
        var starts = new List<DateOnly>();
        for (var start = period.Start(first); start <= last; start = period switch
        {
            ReportPeriod.Day => start.AddDays(1),
            ReportPeriod.Week => start.AddDays(7),
            _ => start.AddMonths(1),
        })
        {
            starts.Add(start);
        }

        return [.. starts];
    }
}
