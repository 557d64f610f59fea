using System.Runtime.InteropServices;
using ScreenStats.Counting.Cubes;

namespace ScreenStats.Evaluation.Trends.Series;

/// <summary>The runs of a basis by day, and of each site by ISO week, in one pass over the cubes.</summary>
internal sealed class TrendCube
{
    private readonly TrendCounts[] days;

    private TrendCube(DateOnly first, DateOnly last, Func<ScreenCell, bool> kept)
    {
        Kept = kept;
        First = first;
        Last = last;
        FirstMonday = ReportPeriods.Monday(first);
        days = new TrendCounts[last.DayNumber - first.DayNumber + 1];
        Weeks = ((last.DayNumber - FirstMonday.DayNumber) / 7) + 1;
    }

    /// <summary>First day with a run, of every basis.</summary>
    public DateOnly First { get; }

    /// <summary>Last day with a run, of every basis.</summary>
    public DateOnly Last { get; }

    /// <summary>Monday of the first week.</summary>
    public DateOnly FirstMonday { get; }

    /// <summary>Number of ISO weeks.</summary>
    public int Weeks { get; }

    /// <summary>Each site by the number of the ISO week; weeks without runs are not there, so that one mistyped year costs nothing.</summary>
    public SortedDictionary<string, Dictionary<int, TrendCounts>> Sites { get; } = new(Levels.Order);

    /// <summary>Counted runs that the basis leaves out.</summary>
    public long RunsLeftOut { get; private set; }

    /// <summary>Which runs it holds.</summary>
    public Func<ScreenCell, bool> Kept { get; }

    /// <summary>Counts of a day; of none outside the span.</summary>
    public TrendCounts this[DateOnly day] => day < First || day > Last ? default : days[day.DayNumber - First.DayNumber];

    /// <summary>The days of the span.</summary>
    public IEnumerable<DateOnly> Days => Enumerable.Range(First.DayNumber, days.Length).Select(DateOnly.FromDayNumber);

    /// <summary>The number of the ISO week that holds a day.</summary>
    public int Week(DateOnly day) => (day.DayNumber - FirstMonday.DayNumber) / 7;

    /// <summary>Counts of days.</summary>
    public TrendCounts Sum(DateOnly from, DateOnly to)
    {
        var sum = default(TrendCounts);
        var (start, end) = (Math.Max(0, from.DayNumber - First.DayNumber), Math.Min(days.Length - 1, to.DayNumber - First.DayNumber));
        for (var day = start; day <= end; day++) sum.Add(days[day]);
        return sum;
    }

    /// <summary>The runs of a tally that are kept; null where nothing was counted.</summary>
    public static TrendCube? Of(Tally tally, Func<ScreenCell, bool> kept)
    {
        if (tally.FirstDay is not { } first || tally.LastDay is not { } last) return null;
        var cube = new TrendCube(first, last, kept);
        var (site, weeks) = ((string?)null, new Dictionary<int, TrendCounts>());
        foreach (var cell in tally.Cells.Screens)
        {
            if (!kept(cell))
            {
                cube.RunsLeftOut += cell.Runs;
                continue;
            }

            // Cells come in order of site.
            if (!ReferenceEquals(site, cell.Site))
            {
                site = cell.Site;
                if (!cube.Sites.TryGetValue(site, out weeks!)) cube.Sites.Add(site, weeks = []);
            }

            cube.days[cell.Day.DayNumber - first.DayNumber].Add(cell.Outcome, cell.FollowUp, cell.Runs);
            CollectionsMarshal.GetValueRefOrAddDefault(weeks, cube.Week(cell.Day), out _).Add(cell.Outcome, cell.FollowUp, cell.Runs);
        }

        return cube;
    }
}
