using System.Collections.Immutable;
using ScreenStats.Counting.Cubes;
using ScreenStats.Evaluation.Cadence.Draws;
using ScreenStats.Evaluation.Clusters;
using ScreenStats.Evaluation.Shared;
using ScreenStats.Statistics.Cadence.Courses;

namespace ScreenStats.Evaluation.Cadence.Inputs;

/// <summary>Figures that the data of the program give.</summary>
internal sealed class DataFigures
{
    private const double MinutesPerDay = 1_440;

    public DataFigures(Tally tally, IReadOnlyCollection<string> flaggedLots, double confidence)
    {
        var cells = tally.Cells;
        HasConfirmatory = cells.HasConfirmatory;
        Gaps = [.. cells.Gaps.Where(gap => gap.Days > 0).GroupBy(gap => gap.Days).OrderBy(gap => gap.Key).Select(gap => new CadenceGap(gap.Key, gap.Sum(cell => cell.Count)))];
        Sites = [.. cells.Gaps.Where(gap => gap.Days > 0).GroupBy(gap => gap.Site, StringComparer.Ordinal).OrderBy(site => site.Key, Levels.Order).Select(site => (site.Key, site.Sum(gap => gap.Count), site.Sum(gap => gap.Days * gap.Count)))];
        GapCount = Gaps.Sum(gap => gap.Count);
        PersonDays = Gaps.Sum(gap => gap.Days * gap.Count);
        People = cells.Persons.Where(cell => cell is { Scope: PersonScope.Program, Measure: PersonMeasure.InvalidRuns }).Sum(cell => cell.Persons);
        var runs = cells.Screens.Sum(cell => cell.Runs);
        if (runs > 0) AtWeekends = cells.Screens.Where(cell => cell.Day.DayOfWeek is DayOfWeek.Saturday or DayOfWeek.Sunday).Sum(cell => cell.Runs) / (double)runs;
        Cases = cells.Cases.Where(cell => cell.FoundThrough == Outcome.Positive).Sum(cell => cell.Cases);

        var cases = new ClusterCounter();
        foreach (var cell in cells.Screens) cases.Add(cell.Site, cell.Day, cell.Runs, 0);
        foreach (var cell in cells.Cases.Where(cell => cell.FoundThrough == Outcome.Positive)) cases.Add(cell.Site, cell.Day, 0, cell.Cases);
        var found = cases.Proportion(confidence);
        CaseDesignEffect = found.DesignEffect;
        CaseClusters = found.Clusters ?? 0;

        var due = new ClusterCounter();
        var sound = new ClusterCounter();
        var (unclear, tested) = (new ClusterCounter(), new ClusterCounter());
        long dueOfSound = 0, conclusiveOfSound = 0;
        var left = flaggedLots.ToHashSet(StringComparer.Ordinal);
        foreach (var cell in cells.Screens)
        {
            var conclusive = cell.FollowUp is FollowUp.Confirmed or FollowUp.Refuted;
            if (cell.Outcome == Outcome.Positive) due.Add(cell.Site, cell.Day, cell.Runs, conclusive ? cell.Runs : 0);
            if (!left.Contains(cell.Lot)) unclear.Add(cell.Site, cell.Day, cell.Runs, cell.Outcome == Outcome.Inconclusive ? cell.Runs : 0);
            if (cell.Outcome == Outcome.Inconclusive) tested.Add(cell.Site, cell.Day, cell.Runs, conclusive || cell.FollowUp == FollowUp.Unresolved ? cell.Runs : 0);
            if (cell.Outcome is not (Outcome.Positive or Outcome.Negative) || left.Contains(cell.Lot)) continue;
            sound.Add(cell.Site, cell.Day, cell.Runs, cell is { Outcome: Outcome.Positive, FollowUp: FollowUp.Refuted } ? cell.Runs : 0);
            if (cell.Outcome != Outcome.Positive) continue;
            dueOfSound += cell.Runs;
            if (conclusive) conclusiveOfSound += cell.Runs;
        }

        SiteGaps = Shared(cells, People);
        Recent = new RecentFigures(cells);
        Quarter = new RecentFigures(cells, RecentFigures.QuarterDays);
        FalseAlarms = new RefutedCounts(cells, left);
        LeavesOutLots = cells.Screens.Any(cell => left.Contains(cell.Lot));
        Settled = due.Proportion(confidence);
        RefutedOfValid = sound.Proportion(confidence);
        InconclusiveOfRuns = unclear.Proportion(confidence);
        InconclusiveTested = tested.Proportion(confidence);
        var repeats = cells.Repeats.Where(cell => cell.Outcome == Outcome.Inconclusive).ToList();
        InconclusiveRepeated = (repeats.Sum(cell => cell.Done), repeats.Sum(cell => cell.Due));
        SettledOfSound = (conclusiveOfSound, dueOfSound);
        var hours = cells.Notable
            .Where(run => run is { Control: null, Outcome: Outcome.Positive, FollowUp: FollowUp.Refuted, MinutesToSpecimen: not null } && !left.Contains(run.Lot))
            .Select(run => run.MinutesToSpecimen!.Value / MinutesPerDay).ToList();
        ToRefutation = Mean([.. hours.Select(value => (value, 1L))]);
        ToConfirmation = Mean([.. cells.Notable
            .Where(run => run is { Control: null, Outcome: Outcome.Positive, FollowUp: FollowUp.Confirmed, MinutesToSpecimen: not null })
            .Select(run => (run.MinutesToSpecimen!.Value / MinutesPerDay, 1L))]);
        ToReport = Mean([.. cells.Delays.Where(cell => cell is { Kind: DelayKind.SpecimenToReport, Minutes: not null }).Select(cell => (cell.Minutes!.Value / MinutesPerDay, cell.Count))]);
    }

    public bool HasConfirmatory { get; }

    /// <summary>Days between a person's consecutive screens, runs on the same day being one.</summary>
    public ImmutableArray<CadenceGap> Gaps { get; }

    /// <summary>Gaps and their days at each site.</summary>
    public ImmutableArray<(string Site, long Gaps, long Days)> Sites { get; }

    public long GapCount { get; }

    public long PersonDays { get; }

    public long People { get; }

    /// <summary>Share of runs on a Saturday or Sunday; null without runs.</summary>
    public double? AtWeekends { get; }

    /// <summary>Cases that a positive run found.</summary>
    public long Cases { get; }

    /// <summary>How much more cases vary than chance alone makes them, over sites and site-weeks.</summary>
    public double CaseDesignEffect { get; }

    /// <summary>Sites or site-weeks behind that; 0 where there are too few of them.</summary>
    public long CaseClusters { get; }

    /// <summary>People and gaps of each site, all people counted once: somebody at several sites is shared out.</summary>
    public ImmutableArray<(long People, ImmutableArray<ObservedGap> Gaps, long PersonDays)> SiteGaps { get; }

    /// <summary>What the last days of the data had of all.</summary>
    public RecentFigures Recent { get; }

    /// <summary>What the last quarter had of all.</summary>
    public RecentFigures Quarter { get; }

    /// <summary>The refuted positives that the data really had.</summary>
    public RefutedCounts FalseAlarms { get; }

    /// <summary>Positive runs with a conclusive confirmatory result.</summary>
    public ProportionFinding Settled { get; }

    /// <summary>Whether a positive run of a program with a confirmatory export has no conclusive result.</summary>
    public bool HasUnsettled => HasConfirmatory && Settled.Events < Settled.Trials;

    /// <summary>Refuted positives of valid tests, without flagged lots.</summary>
    public ProportionFinding RefutedOfValid { get; }

    public bool LeavesOutLots { get; }

    /// <summary>Inconclusive runs of all runs, without flagged lots.</summary>
    public ProportionFinding InconclusiveOfRuns { get; }

    /// <summary>Inconclusive runs with a confirmatory test.</summary>
    public ProportionFinding InconclusiveTested { get; }

    /// <summary>Repeats of inconclusive runs on the same day.</summary>
    public (long Done, long Due) InconclusiveRepeated { get; }

    private (long Conclusive, long Due) SettledOfSound { get; }

    private (double Value, double Error)? ToRefutation { get; }

    private (double Value, double Error)? ToConfirmation { get; }

    private (double Value, double Error)? ToReport { get; }

    /// <summary>Share of positives that got a conclusive result; null where none was due or none got one.</summary>
    public Uncertain? FollowThrough => Settled is { Trials: > 0, Events: > 0 } ? Beta(Settled) : null;

    /// <summary>
    /// False positives for each valid test: refuted ones, and as large a share of those that were never settled; null where no positive was due or settled.
    /// </summary>
    public Uncertain? FalsePositiveRate()
    {
        var (settled, due) = SettledOfSound;
        if (!HasConfirmatory || RefutedOfValid.Trials == 0 || (due > 0 && settled == 0)) return null;
        var centre = due == 0 ? 0 : Math.Min(1, (double)RefutedOfValid.Events / RefutedOfValid.Trials * due / settled);
        var (events, others) = Weights(RefutedOfValid);
        return Uncertain.Drawn(centre, stream =>
        {
            var refuted = stream.Beta(events, others);
            return due == 0 ? refuted : Math.Min(1, refuted / stream.Beta(settled + 0.5, due - settled + 0.5));
        });
    }

    /// <summary>Days from a refuted positive to the report that refuted it; null where they are not recorded.</summary>
    public Uncertain? FalseAlarmDays => Sum(ToRefutation, ToReport);

    /// <summary>Days from a confirmed positive to the report that confirmed it; null where they are not recorded.</summary>
    public Uncertain? ConfirmatoryDays => Sum(ToConfirmation, ToReport);

    // People by site add up to more than all where some were at several: then each site's are as many fewer.
    private static ImmutableArray<(long People, ImmutableArray<ObservedGap> Gaps, long PersonDays)> Shared(TallyCells cells, long people)
    {
        var at = cells.Persons.Where(cell => cell is { Scope: PersonScope.Site, Measure: PersonMeasure.InvalidRuns })
            .GroupBy(cell => cell.Level, StringComparer.Ordinal).ToDictionary(site => site.Key, site => site.Sum(cell => cell.Persons), StringComparer.Ordinal);
        var gaps = cells.Gaps.Where(gap => gap.Days > 0).ToLookup(gap => gap.Site, StringComparer.Ordinal);
        List<string> sites = [.. at.Keys.Union(gaps.Select(site => site.Key), StringComparer.Ordinal).Order(Levels.Order)];
        if (at.Count == 0 || sites.Count < 2) return [Site(people, cells.Gaps.Where(gap => gap.Days > 0))];
        var all = at.Values.Sum();
        var (before, placed, shared) = (0L, 0L, ImmutableArray.CreateBuilder<(long, ImmutableArray<ObservedGap>, long)>());
        foreach (var site in sites)
        {
            before += at.GetValueOrDefault(site);
            var upTo = (long)Math.Round(people * (double)before / all);
            shared.Add(Site(upTo - placed, gaps[site]));
            placed = upTo;
        }

        return shared.ToImmutable();

        static (long, ImmutableArray<ObservedGap>, long) Site(long people, IEnumerable<GapCell> own)
        {
            var days = own.GroupBy(gap => gap.Days).OrderBy(gap => gap.Key).Select(gap => new ObservedGap(gap.Key, gap.Sum(cell => cell.Count))).ToImmutableArray();
            return (people, days, days.Sum(gap => (long)(gap.Days * gap.Count)));
        }
    }

    /// <summary>Of all runs those that are inconclusive, and of these those tested and those repeated: none seen is taken as none. Null without runs.</summary>
    public (Uncertain Rate, Uncertain Tested, Uncertain Repeated)? Inconclusive()
    {
        if (InconclusiveOfRuns.Trials == 0) return null;
        static Uncertain Share(ProportionFinding share) => share.Events == 0 ? Uncertain.Exact(0) : Beta(share);
        var (done, due) = InconclusiveRepeated;
        return (Share(InconclusiveOfRuns), Share(InconclusiveTested), done == 0 ? Uncertain.Exact(0) : Uncertain.Drawn((double)done / due, stream => stream.Beta(done + 0.5, due - done + 0.5)));
    }

    /// <summary>A share by counts divided by their design effect, with half a success and half a failure more.</summary>
    private static Uncertain Beta(ProportionFinding share)
    {
        var (events, others) = Weights(share);
        return Uncertain.Drawn(share.Estimate!.Value, stream => stream.Beta(events, others));
    }

    private static (double Events, double Others) Weights(ProportionFinding share) =>
        ((share.Events / share.DesignEffect) + 0.5, ((share.Trials - share.Events) / share.DesignEffect) + 0.5);

    private static (double Value, double Error)? Mean(IReadOnlyCollection<(double Value, long Count)> values)
    {
        var count = values.Sum(entry => entry.Count);
        if (count == 0) return null;
        var mean = values.Sum(entry => entry.Value * entry.Count) / count;
        var squares = values.Sum(entry => (entry.Value - mean) * (entry.Value - mean) * entry.Count);
        return (mean, count < 2 ? 0 : Math.Sqrt(squares / (count - 1) / count));
    }

    private static Uncertain? Sum((double Value, double Error)? first, (double Value, double Error)? second)
    {
        if (first is not { } one || second is not { } two) return null;
        var mean = Math.Max(0, one.Value + two.Value);
        var error = Math.Sqrt((one.Error * one.Error) + (two.Error * two.Error));
        return error > 0 && mean > 0 ? Uncertain.Drawn(mean, stream => Math.Max(0, mean + (error * stream.Normal()))) : Uncertain.Exact(mean);
    }
}
