using System.Collections.Immutable;
using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Programs;
using ScreenStats.Evaluation.Alarms.Rules;

namespace ScreenStats.Evaluation.Alarms;

/// <summary>Every alarm from the first day to the last, by the replay that answers for a single day too.</summary>
internal static class AlarmAnalysis
{
    public static AlarmFindings Of(Tally tally, ProgramSettings settings, IReadOnlyCollection<string> flagged)
    {
        var engine = new AlarmEngine(tally, settings);
        var raised = new Dictionary<(AlarmRule Rule, string By, string Level, DateOnly Since), (Alarm First, Alarm Last, DateOnly Until, int Days)>();
        var points = new List<LotEvidencePoint>();
        foreach (var today in AlarmReplay.Days(engine))
        {
            foreach (var alarm in today.Alarms)
            {
                var key = (alarm.Rule, alarm.By, alarm.Level, alarm.Since);
                raised[key] = raised.TryGetValue(key, out var before) ? (before.First, alarm, today.AsOf, before.Days + 1) : (alarm, alarm, today.AsOf, 1);
            }

            points.AddRange(engine.Refuted.Lots.Where(lot => lot.Value.ChangedOn == today.AsOf).Select(lot => Point(lot.Key, today.AsOf, lot.Value)));
        }

        var last = engine.Program.Last ?? default;
        ImmutableArray<RaisedAlarm> alarms =
        [
            .. raised.OrderBy(pair => pair.Key.Since).ThenBy(pair => pair.Key.Rule).ThenBy(pair => pair.Key.By, Levels.Order).ThenBy(pair => pair.Key.Level, Levels.Order)
                .Select(pair => Row(pair.Value.First, pair.Value.Last, pair.Value.Until, pair.Value.Days, last)),
        ];
        var named = engine.Refuted.Lots.Where(lot => lot.Value.Alarm is not null).Select(lot => lot.Key).ToHashSet(Levels.Order);
        var findings = new AlarmFindings
        {
            FalseAlarmChance = settings.Alarms.FalseAlarmChance,
            FalseAlarmEveryDays = settings.Alarms.FalseAlarmEveryDays,
            Raised = alarms.Length,
            Open = alarms.Count(alarm => alarm.Status is "new" or "standing"),
            Alarms = alarms,
            Lots = LotAlarms.Of(tally, [.. raised.Values.Select(entry => entry.First)], flagged),
            Evidence = [.. points.Where(point => named.Contains(point.Lot)).OrderBy(point => point.Lot, Levels.Order).ThenBy(point => point.Day)],
            Tables = [],
            Sentences = [],
        };
        return findings with
        {
            Tables = [AlarmTables.Alarms(findings.Alarms), AlarmTables.Lots(findings.Lots), AlarmTables.Evidence(findings.Evidence)],
            Sentences = AlarmSentences.Of(findings, tally),
        };
    }

    private static RaisedAlarm Row(Alarm first, Alarm latest, DateOnly until, int days, DateOnly last)
    {
        var rule = AlarmNames.Of(first.Rule);
        double? Scaled(double? value) => value is { } some ? first.Rule == AlarmRule.InvalidRise ? some : Math.Log10(some) : null;
        return new RaisedAlarm(
            $"{rule}|{first.By}|{first.Level}|{AlarmWords.Day(first.Since)}", rule, first.By, first.Level, first.Since, until == last ? null : until, days,
            until == last ? AlarmNames.Of(latest.Status) : "ended", first.Evidence.Text, first.Evidence.Found, first.Evidence.Among, first.Evidence.Expected,
            Scaled(first.Evidence.Value), Scaled(first.Evidence.Threshold), first.Next);
    }

    private static LotEvidencePoint Point(string lot, DateOnly day, EvidenceTrack track) => new(
        $"{lot}|{AlarmWords.Day(day)}", lot, day, track.Events, track.Observations, track.Expected, track.LogEvidence / Math.Log(10), track.Threshold.LogEvidence / Math.Log(10));
}
