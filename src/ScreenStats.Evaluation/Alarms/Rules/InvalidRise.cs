using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Programs;
using ScreenStats.Statistics.Monitoring.Sequential.CountSums;
using ScreenStats.Statistics.Monitoring.Sequential.CumulativeSums;

namespace ScreenStats.Evaluation.Alarms.Rules;

/// <summary>
/// A rise of the invalid-run rate of a site or lot to twice the program's ordinary one: a Bernoulli cumulative sum over the days since the baseline. The sum is
/// held at its limit, and an alarm ends when it is back at 0.
/// </summary>
/// <remarks>
/// The k-th place may give a false alarm once in F (k + 9) (k + 10) / 10 days at its volume, F being twice the days of the program file since sites and lots
/// share them; the rates of false alarms then add up to at most one in the days of the program file, however many places there are.
/// </remarks>
internal sealed class InvalidRise(AlarmSettings settings, Func<string, Place> placeOf)
{
    private readonly SortedDictionary<string, Track> tracks = new(Levels.Order);
    private BernoulliDesign? design;
    private double volume;

    /// <summary>Starts at the end of the baseline, from the program's ordinary rate and runs a day.</summary>
    public void Begin(double rate, double runsPerDay)
    {
        // A program in which two of five runs are unusable has other troubles than a rise.
        if (rate is > 0 and < 0.4 && runsPerDay > 0) design = BernoulliCumulativeSum.Design(rate, 2 * rate);
        volume = runsPerDay;
    }

    public void Advance(DateOnly day, SortedDictionary<string, (long Runs, long Unusable)> sums)
    {
        foreach (var (level, sum) in sums)
        {
            if (!tracks.TryGetValue(level, out var track)) tracks.Add(level, track = new Track(tracks.Count + 1));
            if (design is null)
            {
                track.Baseline += sum.Runs;
                continue;
            }

            track.Limit ??= LimitOf(track);
            if (track.Limit is not { } limit) continue;
            if (track.Sum == 0) (track.Start, track.Runs, track.Unusable) = (day, 0, 0);
            (track.Runs, track.Unusable) = (track.Runs + sum.Runs, track.Unusable + sum.Unusable);
            track.Sum = Math.Clamp(track.Sum + (sum.Unusable * design.Denominator) - (sum.Runs * design.Numerator), 0, limit);
            if (track.Sum >= limit) track.Since ??= day;
            else if (track.Sum == 0) track.Since = null;
        }
    }

    public IEnumerable<StandingAlarm> Standing() =>
        from pair in tracks
        where pair.Value.Since is not null
        let place = placeOf(pair.Key)
        select new StandingAlarm(AlarmRule.InvalidRise, place, pair.Value.Since!.Value, AlarmWords.What(AlarmRule.InvalidRise, place),
            AlarmWords.OfRise(pair.Value.Start, pair.Value.Runs, pair.Value.Unusable, design!.RateInOrder,
                (double)pair.Value.Sum / design.Denominator, (double)pair.Value.Limit!.Value / design.Denominator), AlarmWords.Next(AlarmRule.InvalidRise));

    // In whole steps of the lattice. A place without runs in the baseline is taken to do as many as the others on average.
    private long? LimitOf(Track track)
    {
        var places = Math.Max(1, tracks.Values.Count(other => other.Baseline > 0));
        var runs = track.Baseline > 0 ? (double)track.Baseline / settings.BaselineDays : volume / places;
        var days = 2.0 * settings.FalseAlarmEveryDays * (track.Place + 9.0) * (track.Place + 10.0) / 10;
        var found = BernoulliCumulativeSum.LimitFor(design!, FalseAlarmTarget.OnceInRuns(Math.Max(1, runs * days)));
        return found.Limit is { } limit ? (long)Math.Round(limit * design!.Denominator) : null;
    }

    private sealed class Track(int place)
    {
        public int Place { get; } = place;

        public long Baseline { get; set; }

        public long? Limit { get; set; }

        public long Sum { get; set; }

        public DateOnly Start { get; set; }

        public long Runs { get; set; }

        public long Unusable { get; set; }

        public DateOnly? Since { get; set; }
    }
}
