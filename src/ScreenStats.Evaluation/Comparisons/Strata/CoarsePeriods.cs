using System.Globalization;

namespace ScreenStats.Evaluation.Comparisons.Strata;

/// <summary>ISO weeks, or months where there are many, put together until each has events.</summary>
internal sealed class CoarsePeriods
{
    /// <summary>Up to this many weeks are told apart as weeks, beyond as months.</summary>
    public const int MostWeeks = 26;

    /// <summary>A period has at least so many events, and so many trials without.</summary>
    public const long FewestEvents = 5;

    private readonly int firstWeek;
    private readonly int[] periods;

    private CoarsePeriods(int firstWeek, int[] periods, IReadOnlyList<string> names) => (this.firstWeek, this.periods, Names) = (firstWeek, periods, names);

    /// <summary>First to last day of each period.</summary>
    public IReadOnlyList<string> Names { get; }

    /// <summary>The period of a week.</summary>
    public int Of(int week) => periods[week - firstWeek];

    /// <summary>Puts weeks together.</summary>
    /// <param name="weeks">Trials and events by week; a week belongs to the month of its Thursday.</param>
    /// <param name="most">The most periods.</param>
    public static CoarsePeriods Of(SortedDictionary<int, (long Trials, long Events)> weeks, int most)
    {
        if (weeks.Count == 0) return new CoarsePeriods(0, [], []);
        var (first, last) = (weeks.Keys.First(), weeks.Keys.Last());
        var byMonth = last - first + 1 > MostWeeks;
        var events = weeks.Values.Sum(week => week.Events);
        var others = weeks.Values.Sum(week => week.Trials) - events;
        var (fewest, fewestOthers) = (Math.Max(FewestEvents, Ceiling(events, most)), FewestEvents);

        // Neighbours that cannot be told apart anyhow, then put together from the first on; what is left at the end joins the last.
        var units = weeks.GroupBy(week => byMonth ? Month(week.Key) : week.Key).OrderBy(unit => unit.Key)
            .Select(unit => (Weeks: unit.Select(week => week.Key).ToList(), Events: unit.Sum(week => week.Value.Events), Trials: unit.Sum(week => week.Value.Trials))).ToList();
        var groups = new List<(List<int> Weeks, long Events, long Others)>();
        var (open, openEvents, openOthers) = (new List<int>(), 0L, 0L);
        foreach (var unit in units)
        {
            open.AddRange(unit.Weeks);
            (openEvents, openOthers) = (openEvents + unit.Events, openOthers + unit.Trials - unit.Events);
            if (openEvents < fewest || openOthers < fewestOthers) continue;
            groups.Add((open, openEvents, openOthers));
            (open, openEvents, openOthers) = ([], 0, 0);
        }

        if (open.Count > 0)
        {
            if (groups.Count == 0) groups.Add((open, openEvents, openOthers));
            else groups[^1].Weeks.AddRange(open);
        }

        var periods = new int[last - first + 1];
        for (var period = 0; period < groups.Count; period++)
        {
            foreach (var week in groups[period].Weeks) periods[week - first] = period;
        }

        return new CoarsePeriods(first, periods, [.. groups.Select(group => $"{Day(group.Weeks[0])} to {Day(group.Weeks[^1], 6)}")]);
    }

    private static long Ceiling(long events, int most) => (events + most - 1) / most;

    private static int Month(int week)
    {
        var thursday = DateOnly.FromDayNumber((7 * week) + 3);
        return (12 * thursday.Year) + thursday.Month;
    }

    private static string Day(int week, int after = 0) => DateOnly.FromDayNumber((7 * week) + after).ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
}
