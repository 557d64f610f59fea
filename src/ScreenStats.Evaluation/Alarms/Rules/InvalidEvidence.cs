using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Programs;
using ScreenStats.Statistics.Monitoring.Sequential.Evidence;

namespace ScreenStats.Evaluation.Alarms.Rules;

/// <summary>
/// Proof that the invalid-run rate of a site or lot exceeds the limit: evidence run by run with the limit as null probability. It stands as long as the rate
/// of the place's last 28 days of the calendar is above the limit, so that a place that was mended is left in peace.
/// </summary>
internal sealed class InvalidEvidence(AlarmSettings settings, Func<string, Place> placeOf)
{
    private const int Window = 28;
    private static readonly double[] Multiples = [1.25, 1.5, 2, 4, 8, 16];
    private readonly SortedDictionary<string, Track> tracks = new(Levels.Order);

    public void Advance(DateOnly day, SortedDictionary<string, (long Runs, long Unusable)> sums)
    {
        foreach (var (level, sum) in sums)
        {
            if (!tracks.TryGetValue(level, out var track))
                tracks.Add(level, track = new Track(new EvidenceTrack(day, AlarmThreshold.OfEvenArrival(tracks.Count + 1, settings.FalseAlarmChance), Multiples)));
            track.Evidence.Add(day, settings.InvalidRateLimit, sum.Unusable, sum.Runs);
            track.Recent.Enqueue((day, sum.Runs, sum.Unusable));
            (track.Runs, track.Unusable) = (track.Runs + sum.Runs, track.Unusable + sum.Unusable);
        }

        foreach (var track in tracks.Values)
        {
            while (track.Recent.TryPeek(out var old) && old.Day.DayNumber <= day.DayNumber - Window)
            {
                track.Recent.Dequeue();
                (track.Runs, track.Unusable) = (track.Runs - old.Runs, track.Unusable - old.Unusable);
            }

            track.Evidence.Close(day);
            if (track.Evidence.LogEvidence >= track.Evidence.Threshold.LogEvidence) track.Since ??= day;
            if (track.Runs > 0 && track.Unusable <= settings.InvalidRateLimit * track.Runs) track.Since = null;
        }
    }

    public IEnumerable<StandingAlarm> Standing() =>
        from pair in tracks
        where pair.Value.Since is not null
        let place = placeOf(pair.Key)
        select new StandingAlarm(AlarmRule.InvalidEvidence, place, pair.Value.Since!.Value, AlarmWords.What(AlarmRule.InvalidEvidence, place),
            AlarmWords.OfInvalid(pair.Value.Evidence, settings.InvalidRateLimit, pair.Value.Runs, pair.Value.Unusable), AlarmWords.Next(AlarmRule.InvalidEvidence));

    private sealed class Track(EvidenceTrack evidence)
    {
        public EvidenceTrack Evidence { get; } = evidence;

        public Queue<(DateOnly Day, long Runs, long Unusable)> Recent { get; } = new();

        public long Runs { get; set; }

        public long Unusable { get; set; }

        public DateOnly? Since { get; set; }
    }
}
