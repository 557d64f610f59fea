using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Programs;
using ScreenStats.Statistics.Monitoring.Sequential.Evidence;

namespace ScreenStats.Evaluation.Alarms.Rules;

/// <summary>
/// Refuted positives by lot (too many) or confirmed ones (too few), within site and day. Each first report falls on a lot with null probability p, the lot's
/// share of the valid tests of that site and day that may still be drawn, each weighted by its lot's follow-through as known the day before.
/// </summary>
internal sealed class LotEvidenceRule(ProgramFacts program, AlarmSettings settings, bool excess) : IAlarmRule
{
    private readonly FirstReports reports = new(excess ? FollowUp.Refuted : FollowUp.Confirmed);
    private readonly FollowThrough followThrough = new();
    private readonly SortedDictionary<string, EvidenceTrack> lots = new(Levels.Order);
    private readonly Dictionary<(string Site, DateOnly Day, string Lot), long> drawn = [];

    /// <summary>The evidence by lot, for the evaluation.</summary>
    public IReadOnlyDictionary<string, EvidenceTrack> Lots => lots;

    /// <summary>Lots that have an alarm by now.</summary>
    public IReadOnlyCollection<string> LotsWithAlarm => [.. lots.Where(pair => pair.Value.Alarm is not null).Select(pair => pair.Key)];

    public void Advance(DateOnly day, DayFacts facts)
    {
        foreach (var use in facts.Uses.Where(use => use.Lot != Levels.None).DistinctBy(use => use.Lot).OrderBy(use => use.Lot, Levels.Order))
        {
            if (!lots.ContainsKey(use.Lot))
                lots.Add(use.Lot, new EvidenceTrack(day, AlarmThreshold.OfEvenArrival(lots.Count + 1, settings.FalseAlarmChance), excess ? RestartingEvidence.Excess : RestartingEvidence.Lack));
        }

        foreach (var stratum in reports.Of(facts.Changes).GroupBy(one => (one.Site, one.Day)))
        {
            Add(day, stratum.Key.Site, stratum.Key.Day, [.. stratum.Select(one => (one.Lot, one.Runs))]);
        }

        followThrough.Take(facts.Changes);
        foreach (var track in lots.Values) track.Close(day);
    }

    public IEnumerable<StandingAlarm> Standing() =>
        from pair in lots
        where pair.Value.Alarm is not null
        select new StandingAlarm(
            excess ? AlarmRule.LotEvidence : AlarmRule.LowYield, Place.Lot(pair.Key), pair.Value.Alarm!.Value,
            AlarmWords.What(excess ? AlarmRule.LotEvidence : AlarmRule.LowYield, Place.Lot(pair.Key)),
            AlarmWords.Of(pair.Value, excess), AlarmWords.Next(excess ? AlarmRule.LotEvidence : AlarmRule.LowYield));

    private void Add(DateOnly known, string site, DateOnly day, List<(string Lot, long Runs)> events)
    {
        List<(string Lot, double Weight)> shares = [];
        foreach (var use in program.Stratum(site, day))
        {
            if (use.Lot == Levels.None) continue;
            var left = use.Valid - drawn.GetValueOrDefault((site, day, use.Lot));
            if (left > 0) shares.Add((use.Lot, left * followThrough.Of(use.Lot)));
        }

        // A lot that was alone, or is by now, says nothing of itself.
        if (shares.Count > 1)
        {
            var total = shares.Sum(share => share.Weight);
            var all = events.Sum(one => one.Runs);
            foreach (var (lot, weight) in shares) lots[lot].Add(known, weight / total, events.FirstOrDefault(one => one.Lot == lot).Runs, all);
        }

        foreach (var (lot, runs) in events) drawn[(site, day, lot)] = drawn.GetValueOrDefault((site, day, lot)) + runs;
    }
}
