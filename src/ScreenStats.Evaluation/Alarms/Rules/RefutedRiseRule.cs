using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Programs;
using ScreenStats.Statistics.Monitoring.Sequential.Evidence;

namespace ScreenStats.Evaluation.Alarms.Rules;

/// <summary>
/// Refuted positives of a site come faster than before at the same site. It finds what <see cref="LotEvidenceRule"/> cannot: a lot that is the only one in use. Lots
/// that have an alarm of their own are left out, so that a bad lot does not make its sites look bad. It stands as long as the evidence is at its threshold.
/// </summary>
internal sealed class RefutedRiseRule(ProgramFacts program, AlarmSettings settings, Func<IReadOnlyCollection<string>> lotsWithAlarm) : IAlarmRule
{
    private readonly FirstReports reports = new(FollowUp.Refuted, withoutLot: true);
    private readonly SortedDictionary<string, Track> sites = new(Levels.Order);
    private string[] left = [];

    public void Advance(DateOnly day, DayFacts facts)
    {
        var now = lotsWithAlarm().Order(Levels.Order).ToArray();
        var changed = !now.SequenceEqual(left, Levels.Order);
        left = now;
        if (changed)
        {
            foreach (var (site, track) in sites) track.Count(track.Days, past => Tests(program.Stratum(site, past)));
        }

        HashSet<string> touched = new(Levels.Order);
        foreach (var uses in facts.Uses.GroupBy(use => use.Site))
        {
            if (!sites.TryGetValue(uses.Key, out var track)) sites.Add(uses.Key, track = new Track(AlarmThreshold.OfEvenArrival(sites.Count + 1, settings.FalseAlarmChance)));
            track.Count(day, Tests(uses));
            touched.Add(uses.Key);
        }

        foreach (var (site, run, lot, runs) in reports.Of(facts.Changes))
        {
            if (!sites.TryGetValue(site, out var track)) continue;
            for (var i = 0L; i < runs; i++) track.Events.Add((run, lot));
            touched.Add(site);
        }

        foreach (var (site, track) in sites)
        {
            if (track.Events.Count > 1 && (changed || touched.Contains(site))) Judge(track, day);
        }
    }

    public IEnumerable<StandingAlarm> Standing() =>
        from pair in sites
        where pair.Value.Since is not null
        let place = Place.Site(pair.Key)
        select new StandingAlarm(AlarmRule.RefutedRise, place, pair.Value.Since!.Value, AlarmWords.What(AlarmRule.RefutedRise, place),
            AlarmWords.OfRefutedRise(pair.Value), AlarmWords.Next(AlarmRule.RefutedRise),
            pair.Value.Lots is [{ Lot: not Levels.None } most, ..] && 2 * most.Runs >= pair.Value.Found ? most.Lot : null);

    private long Tests(IEnumerable<Use> uses) => uses.Where(use => !left.Contains(use.Lot, Levels.Order)).Sum(use => use.Valid);

    private void Judge(Track track, DateOnly day)
    {
        var (tests, sum) = (track.TestsBeforeDay, track.AllTests);
        var events = track.Events.Where(one => !left.Contains(one.Lot, Levels.Order)).OrderBy(one => one.Day).ToList();
        track.LogEvidence = events.Count < 2 || sum == 0 ? 0 : RateRise.LogEvidence([.. events.Select(one => (double)tests[one.Day])], sum);
        track.Since = track.LogEvidence >= track.Threshold.LogEvidence ? track.Since ?? day : null;
        if (track.Since is null) return;

        // The likeliest beginning: the event since which the others stand out most.
        var (best, at) = (double.NegativeInfinity, 1);
        for (var j = 1; j < events.Count; j++)
        {
            var (after, share) = (events.Count - j, Math.Max(1e-9, (double)(sum - tests[events[j].Day]) / sum));
            var score = (after * Math.Log(after / (events.Count * share))) + (j == 0 || share >= 1 ? 0 : j * Math.Log(j / (events.Count * (1 - share))));
            if (after > events.Count * share && score > best) (best, at) = (score, j);
        }

        track.From = events[at].Day;
        track.Found = events.Count - at;
        track.Tests = sum - tests[events[at].Day];
        track.Before = at;
        track.TestsBefore = tests[events[at].Day];
        track.Lots = [.. events.Skip(at).GroupBy(one => one.Lot).OrderByDescending(lot => lot.Count()).ThenBy(lot => lot.Key, Levels.Order).Select(lot => (lot.Key, (long)lot.Count()))];
    }

    /// <summary>One site.</summary>
    internal sealed class Track(AlarmThreshold threshold)
    {
        public AlarmThreshold Threshold { get; } = threshold;

        public List<(DateOnly Day, string Lot)> Events { get; } = [];

        /// <summary>Valid tests before each day of use, without the lots left out.</summary>
        public Dictionary<DateOnly, long> TestsBeforeDay { get; } = [];

        public List<DateOnly> Days { get; } = [];

        public long AllTests { get; private set; }

        public double LogEvidence { get; set; }

        public DateOnly? Since { get; set; }

        public DateOnly From { get; set; }

        public long Found { get; set; }

        public long Tests { get; set; }

        public long Before { get; set; }

        public long TestsBefore { get; set; }

        public IReadOnlyList<(string Lot, long Runs)> Lots { get; set; } = [];

        public void Count(DateOnly day, long tests)
        {
            Days.Add(day);
            TestsBeforeDay.Add(day, AllTests);
            AllTests += tests;
        }

        public void Count(List<DateOnly> days, Func<DateOnly, long> tests)
        {
            AllTests = 0;
            foreach (var day in days)
            {
                TestsBeforeDay[day] = AllTests;
                AllTests += tests(day);
            }
        }
    }
}
