using ScreenStats.Counting.Cubes;

namespace ScreenStats.Evaluation.Alarms.Rules;

/// <summary>
/// Something in the conduct of runs that was recorded at least so often in the last 14 days: an expired lot (by lot), runs beyond what a kit holds (by site).
/// </summary>
internal sealed class ConductAlarmRule(AlarmRule rule, ConductKind kind, long fewest, Func<ConductCell, Place> placeOf, Func<ConductCell, string> otherOf) : IAlarmRule
{
    private readonly SortedDictionary<string, (Place Place, DateOnly? Since, List<ConductCell> Recent)> found = new(Levels.Order);

    public void Advance(DateOnly day, DayFacts facts)
    {
        foreach (var cell in facts.Conduct)
        {
            if (cell.Kind != kind) continue;
            var place = placeOf(cell);
            if (!found.TryGetValue(place.Level, out var entry)) found.Add(place.Level, entry = (place, null, []));
            entry.Recent.Add(cell);
        }

        foreach (var (level, entry) in found.ToList())
        {
            entry.Recent.RemoveAll(cell => cell.Day.DayNumber <= day.DayNumber - AlarmEngine.RecentDays);
            if (entry.Recent.Count == 0) found.Remove(level);
            else found[level] = entry with { Since = entry.Recent.Sum(cell => cell.Runs) >= fewest ? entry.Since ?? day : null };
        }
    }

    public IEnumerable<StandingAlarm> Standing() =>
        from entry in found.Values
        where entry.Since is not null
        let runs = entry.Recent.Sum(cell => cell.Runs)
        let others = entry.Recent.GroupBy(otherOf).OrderBy(part => part.Key, Levels.Order).Select(part => (part.Key, part.Sum(cell => cell.Runs))).ToList()
        select new StandingAlarm(rule, entry.Place, entry.Since!.Value, AlarmWords.What(rule, entry.Place),
            new AlarmEvidence(AlarmWords.OfConduct(rule, runs, entry.Recent.Max(cell => cell.Day), others), runs), AlarmWords.Next(rule));
}
