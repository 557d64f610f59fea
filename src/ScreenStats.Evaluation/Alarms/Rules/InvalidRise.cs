using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Programs;
using ScreenStats.Statistics.Monitoring.Sequential.CountSums;
using ScreenStats.Statistics.Monitoring.Sequential.CumulativeSums;

namespace ScreenStats.Evaluation.Alarms.Rules;

/// <summary>
/// A rise of the invalid-run rate of a site or lot to twice its ordinary one: a Bernoulli cumulative sum over the days since the baseline. The sum is
/// held at its limit, and an alarm ends when it is back at 0.
/// </summary>
/// <remarks>
/// The ordinary rate of a place is its own in the baseline, (x + 5) / (n + 5/p) with p the program's, but no less than p and no more than 2 p: sites differ somewhat
/// without anything having happened, and one that was poor from the start is not to pass for ordinary. A place without runs in the baseline has p.
/// <para>
/// The k-th place may give a false alarm once in F (k + 9) (k + 10) / 10 days at its volume, F being twice the days of the program file since sites and lots
/// share them; the rates of false alarms then add up to at most one in the days of the program file, however many places there are, where a place's rate is the
/// one that is taken as ordinary.
/// </para>
/// </remarks>
internal sealed class InvalidRise(AlarmSettings settings, Func<string, Place> placeOf)
{
    // As many events at the program's rate are added to a place's own.
    private const double Prior = 5;

    // From here on a program has other troubles than a rise: twice its rate must be a rate.
    private const double HighestRate = 0.2;

    private readonly SortedDictionary<string, Track> tracks = new(Levels.Order);
    private readonly Dictionary<double, BernoulliDesign> designs = [];
    private readonly Dictionary<BernoulliDesign, BernoulliLimitSearch> searches = [];
    private double ordinary;
    private double volume;

    /// <summary>Starts at the end of the baseline, from the program's ordinary rate and runs a day.</summary>
    public void Begin(double rate, double runsPerDay)
    {
        if (rate is > 0 and < HighestRate && runsPerDay > 0) ordinary = rate;
        volume = runsPerDay;
    }

    public void Advance(DateOnly day, SortedDictionary<string, (long Runs, long Unusable)> sums)
    {
        foreach (var (level, sum) in sums)
        {
            if (!tracks.TryGetValue(level, out var track)) tracks.Add(level, track = new Track(tracks.Count + 1));
            if (ordinary == 0)
            {
                track.Baseline += sum.Runs;
                track.BaselineUnusable += sum.Unusable;
                continue;
            }

            track.Design ??= DesignOf(track);
            track.Limit ??= LimitOf(track, track.Design);
            if (track.Limit is not { } limit) continue;
            var design = track.Design;
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
            AlarmWords.OfRise(pair.Value.Start, pair.Value.Runs, pair.Value.Unusable, pair.Value.Design!.RateInOrder,
                (double)pair.Value.Sum / pair.Value.Design.Denominator, (double)pair.Value.Limit!.Value / pair.Value.Design.Denominator), AlarmWords.Next(AlarmRule.InvalidRise));

    private double OrdinaryOf(Track track) => Math.Clamp((track.BaselineUnusable + Prior) / (track.Baseline + (Prior / ordinary)), ordinary, 2 * ordinary);

    // Most places have the program's rate: they share one design and the run lengths found for it.
    private BernoulliDesign DesignOf(Track track)
    {
        var rate = OrdinaryOf(track);
        if (designs.TryGetValue(rate, out var design)) return design;
        designs.Add(rate, design = BernoulliCumulativeSum.Design(rate, 2 * rate));
        searches.TryAdd(design, new BernoulliLimitSearch(design));
        return design;
    }

    // In whole steps of the lattice. A place without runs in the baseline is taken to do as many as the others on average.
    private long? LimitOf(Track track, BernoulliDesign design)
    {
        var places = Math.Max(1, tracks.Values.Count(other => other.Baseline > 0));
        var runs = track.Baseline > 0 ? (double)track.Baseline / settings.BaselineDays : volume / places;
        var days = 2.0 * settings.FalseAlarmEveryDays * (track.Place + 9.0) * (track.Place + 10.0) / 10;
        return searches[design].StepsFor(FalseAlarmTarget.OnceInRuns(Math.Max(1, runs * days)));
    }

    private sealed class Track(int place)
    {
        public int Place { get; } = place;

        public long Baseline { get; set; }

        public long BaselineUnusable { get; set; }

        public BernoulliDesign? Design { get; set; }

        public long? Limit { get; set; }

        public long Sum { get; set; }

        public DateOnly Start { get; set; }

        public long Runs { get; set; }

        public long Unusable { get; set; }

        public DateOnly? Since { get; set; }
    }
}
