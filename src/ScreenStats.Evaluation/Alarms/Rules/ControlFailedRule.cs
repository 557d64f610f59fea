using ScreenStats.Counting.Cubes;

namespace ScreenStats.Evaluation.Alarms.Rules;

/// <summary>
/// A control swab did not show what it should, and none of the same kind has passed since at the same site with the same lot. A negative control that passes
/// does not make up for a positive one that failed: a strip that shows nothing passes every negative control.
/// </summary>
internal sealed class ControlFailedRule : IAlarmRule
{
    private readonly SortedDictionary<(string Site, string Lot, ControlExpectation Expected), (DateOnly Since, DateOnly Last, long Failed)> failed =
        new(Comparer<(string Site, string Lot, ControlExpectation Expected)>.Create(Compare));

    public void Advance(DateOnly day, DayFacts facts)
    {
        foreach (var cell in facts.Controls.Where(cell => cell.IsPassed)) failed.Remove((cell.Site, cell.Lot, cell.Expected));
        // On one day only times tell which came first; where they do not, the failed control stands.
        foreach (var cell in facts.Controls.Where(cell => !cell.IsPassed && !facts.Controls.Any(other => MakesUpFor(other, cell))))
        {
            var key = (cell.Site, cell.Lot, cell.Expected);
            failed[key] = failed.TryGetValue(key, out var before) ? before with { Last = day, Failed = before.Failed + cell.Runs } : (day, day, cell.Runs);
        }
    }

    public IEnumerable<StandingAlarm> Standing() =>
        from place in failed.GroupBy(pair => (pair.Key.Site, pair.Key.Lot))
        let at = place.Key.Lot == Levels.None ? Place.Site(place.Key.Site) : Place.SiteAndLot(place.Key.Site, place.Key.Lot)
        select new StandingAlarm(AlarmRule.ControlFailed, at, place.Min(pair => pair.Value.Since), AlarmWords.What(AlarmRule.ControlFailed, at),
            AlarmWords.OfFailed([.. place.Select(pair => (pair.Key.Expected, pair.Value.Failed))], place.Max(pair => pair.Value.Last)), AlarmWords.Next(AlarmRule.ControlFailed));

    private static bool MakesUpFor(ControlCell passed, ControlCell failed) =>
        passed.IsPassed && passed.Site == failed.Site && passed.Lot == failed.Lot && passed.Expected == failed.Expected && passed.Time > failed.Time;

    private static int Compare((string Site, string Lot, ControlExpectation Expected) a, (string Site, string Lot, ControlExpectation Expected) b)
    {
        var site = Levels.Order.Compare(a.Site, b.Site);
        if (site != 0) return site;
        var lot = Levels.Order.Compare(a.Lot, b.Lot);
        return lot != 0 ? lot : a.Expected.CompareTo(b.Expected);
    }
}
