using ScreenStats.Counting.Cubes;

namespace ScreenStats.Evaluation.Alarms.Rules;

/// <summary>Positive runs that are reported refuted (or confirmed) for the first time. A run that was so before and changed twice is no event again.</summary>
internal sealed class FirstReports(FollowUp wanted, bool withoutLot = false)
{
    private readonly Dictionary<SettlementCell, long> before = [];

    /// <summary>Events of a day by the site, day and lot of their runs, in ordinal order; those without a lot only where asked for.</summary>
    public List<(string Site, DateOnly Day, string Lot, long Runs)> Of(IEnumerable<SettlementCell> changes)
    {
        var events = new SortedDictionary<(string Site, DateOnly Day, string Lot), long>(Comparer<(string Site, DateOnly Day, string Lot)>.Create(Compare));
        foreach (var change in changes)
        {
            if (change.Outcome != Outcome.Positive || (change.Lot == Levels.None && !withoutLot)) continue;
            // The run, without what became of it.
            var run = change with { Known = default, Before = default, MinutesBefore = null, After = default, MinutesAfter = null, Runs = 0 };
            if (change.Before == wanted && change.After != wanted) before[run] = before.GetValueOrDefault(run) + change.Runs;
            if (change.After != wanted || change.Before == wanted) continue;
            var again = Math.Min(change.Runs, before.GetValueOrDefault(run));
            if (again > 0) before[run] -= again;
            if (change.Runs == again) continue;
            var key = (change.Site, change.Day, change.Lot);
            events[key] = events.GetValueOrDefault(key) + change.Runs - again;
        }

        return [.. events.Select(pair => (pair.Key.Site, pair.Key.Day, pair.Key.Lot, pair.Value))];
    }

    private static int Compare((string Site, DateOnly Day, string Lot) a, (string Site, DateOnly Day, string Lot) b)
    {
        var site = Levels.Order.Compare(a.Site, b.Site);
        if (site != 0) return site;
        var day = a.Day.CompareTo(b.Day);
        return day != 0 ? day : Levels.Order.Compare(a.Lot, b.Lot);
    }
}
