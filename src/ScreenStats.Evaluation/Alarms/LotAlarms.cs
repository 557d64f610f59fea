using System.Collections.Immutable;
using ScreenStats.Counting.Cubes;
using ScreenStats.Evaluation.Alarms.Rules;

namespace ScreenStats.Evaluation.Alarms;

/// <summary>When each lot would have been known, and what came before and after.</summary>
internal static class LotAlarms
{
    public static ImmutableArray<LotAlarm> Of(Tally tally, IReadOnlyList<Alarm> raised, IReadOnlyCollection<string> flagged)
    {
        var alarms = raised.Select(alarm => (alarm, Lot: alarm.Rule == AlarmRule.LotEvidence ? alarm.Level : alarm.Rule == AlarmRule.RefutedRise ? alarm.Suspect : null))
            .Where(entry => entry.Lot is not null).ToLookup(entry => entry.Lot!, entry => entry.alarm, Levels.Order);
        var reports = new FirstReports(FollowUp.Refuted);
        var refuted = tally.Cells.Settlements.GroupBy(cell => cell.Known).OrderBy(day => day.Key)
            .SelectMany(day => reports.Of(day).Select(one => (one.Lot, Known: day.Key, one.Runs))).ToLookup(one => one.Lot, Levels.Order);
        var last = LastUses(tally);
        return [.. flagged.Union(alarms.Select(group => group.Key), Levels.Order).Order(Levels.Order).Select(Row)];

        LotAlarm Row(string lot)
        {
            var first = alarms[lot].OrderBy(alarm => alarm.Since).ThenBy(alarm => alarm.Rule).FirstOrDefault();
            long? Refuted(Func<DateOnly, DateOnly, bool> when) => first is null ? null : refuted[lot].Where(one => when(one.Known, first.Since)).Sum(one => one.Runs);
            long? After(bool positives) => first is null ? null
                : tally.Cells.Screens.Where(cell => cell.Lot == lot && cell.Day > first.Since && (!positives || cell.Outcome == Outcome.Positive)).Sum(cell => cell.Runs);
            return new LotAlarm(
                lot, flagged.Contains(lot, Levels.Order), first?.Since, first is null ? "" : AlarmNames.Of(first.Rule), Refuted((known, day) => known < day), Refuted((known, day) => known <= day),
                tally.Cells.Screens.Where(cell => cell.Lot == lot && cell is { Outcome: Outcome.Positive, FollowUp: FollowUp.Refuted }).Sum(cell => cell.Runs),
                After(positives: true), After(positives: false), last[lot]);
        }
    }

    private static Dictionary<string, DateOnly> LastUses(Tally tally) =>
        tally.Cells.Screens.GroupBy(cell => cell.Lot, Levels.Order).ToDictionary(lot => lot.Key, lot => lot.Max(cell => cell.Day), Levels.Order);
}
