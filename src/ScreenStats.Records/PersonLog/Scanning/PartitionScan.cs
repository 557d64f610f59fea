using System.Runtime.InteropServices;
using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Ledger;
using ScreenStats.Counting.Programs;
using ScreenStats.Counting.Rules;
using ScreenStats.Records.PersonLog.Checks;
using ScreenStats.Records.PersonLog.Codes;
using ScreenStats.Records.PersonLog.Rows;
using ScreenStats.Records.PersonLog.Spilling;
using ScreenStats.Records.PersonLog.Sums;

namespace ScreenStats.Records.PersonLog.Scanning;

/// <summary>
/// One scan over people, each with all rows in order of time: duplicates, repeats, gaps, participation, sums, linkage. One for each
/// thread; what several threads found is added up by <see cref="Add"/>.
/// </summary>
internal sealed class PartitionScan(
    ShapeInfo[] shapes, SpecimenIndex specimens, PersonLinkage linkage, PersonSums sums, RecordSet removedBefore, TwinFinder twins, PersonChecks checks,
    PolicySettings policy, VerificationClock clock, AuditSums? audits = null, ICountedElsewhere? elsewhere = null)
{
    private readonly LogPiece piece = new();
    private readonly PersonGrouping grouping = new();
    private readonly List<RunEvent> events = [];
    private readonly List<int> eventRuns = [];
    private readonly HashSet<uint> removedHere = [];
    private readonly FollowUpWindow window = FollowUpWindow.OfFollowUp(policy);
    private readonly List<Settlement> changes = [];
    private CountedRun[] runs = [];
    private bool[] done = [];

    public PersonSums Sums => sums;

    /// <summary>Findings of conduct and sense.</summary>
    public PersonChecks Checks => checks;

    /// <summary>Products of people's totals; null without audits.</summary>
    public AuditSums? Audits => audits;

    public List<RunResult> Results { get; } = [];

    /// <summary>Positive runs that were confirmed or refuted, of people who are mostly counted elsewhere.</summary>
    public List<SettledRun> SettledElsewhere { get; } = [];

    /// <summary>When the follow-ups of runs became known: those of one run one after the other.</summary>
    public List<RunChange> Changes { get; } = [];

    public List<RemovedRow> Removed { get; } = [];

    public List<uint> PossibleDuplicates { get; } = [];

    /// <summary>Runs with a follow-up, by shape, day and follow-up.</summary>
    public CountTable FollowUps { get; } = new();

    /// <summary>By site and days.</summary>
    public CountTable Gaps { get; } = new();

    /// <summary>By number of runs.</summary>
    public CountTable Participation { get; } = new();

    /// <summary>By site, day, outcome and done.</summary>
    public CountTable Repeats { get; } = new();

    /// <summary>Positive runs that were repeated on the same day.</summary>
    public List<FoundRetest> Retests { get; } = [];

    /// <summary>By shape and day.</summary>
    public CountTable Cases { get; } = new(16);

    /// <summary>By site and days.</summary>
    public CountTable IntervalCases { get; } = new(16);

    /// <summary>Runs within isolation, as <see cref="RunSink.Conduct"/>.</summary>
    public CountTable Isolated { get; } = new(16);

    /// <summary>Audit specimens that verify a run.</summary>
    public long AuditsWithRun { get; private set; }

    /// <summary>Specimens on which the follow-up or audit of a run rests.</summary>
    public long SettlingSpecimens { get; private set; }

    public void Scan(LogPieces log, int[][] codes, int partition) => log.ForEach(partition, piece, rows =>
    {
        grouping.Gather(rows, codes);
        for (var person = 0; person < grouping.Count; person++) ScanPerson(grouping[person]);
    });

    public void Add(PartitionScan other)
    {
        sums.Add(other.Sums);
        checks.AddAll(other.Checks);
        if (other.Audits is { } others) audits!.Add(others);
        Results.AddRange(other.Results);
        Changes.AddRange(other.Changes);
        SettledElsewhere.AddRange(other.SettledElsewhere);
        Removed.AddRange(other.Removed);
        PossibleDuplicates.AddRange(other.PossibleDuplicates);
        FollowUps.AddAll(other.FollowUps);
        Gaps.AddAll(other.Gaps);
        Participation.AddAll(other.Participation);
        Repeats.AddAll(other.Repeats);
        Retests.AddRange(other.Retests);
        Cases.AddAll(other.Cases);
        IntervalCases.AddAll(other.IntervalCases);
        Isolated.AddAll(other.Isolated);
        AuditsWithRun += other.AuditsWithRun;
        SettlingSpecimens += other.SettlingSpecimens;
    }

    private void ScanPerson(ReadOnlySpan<LogEntry> rows)
    {
        var (start, length) = specimens.Of(rows[0].Person);
        if (length > 0) specimens.Meet(start);
        FindTwins(rows);
        if (runs.Length < rows.Length) runs = new CountedRun[Math.Max(rows.Length, 2 * runs.Length)];
        var (count, unusable, due, inOrder) = (0, false, false, true);
        var anyRemoved = removedHere.Count > 0;
        var (dayNumber, dayStart) = (0, long.MaxValue);
        foreach (ref readonly var row in rows)
        {
            ref readonly var shape = ref shapes[row.Code];
            if (!shape.Counted) continue;
            if (shape.HasScreenId ? removedBefore.Contains(row.Record) : anyRemoved && removedHere.Contains(row.Record)) continue;
            var local = row.Seconds + (60L * shape.OffsetMinutes);
            if ((ulong)(local - dayStart) >= Moment.SecondsPerDay)
            {
                dayNumber = new Moment(row.Seconds + RunCounter.EarliestInstant, shape.OffsetMinutes, false).DayNumber;
                dayStart = (dayNumber * Moment.SecondsPerDay) - RunCounter.EarliestInstant;
            }

            if (count > 0 && dayNumber < runs[count - 1].DayNumber) inOrder = false;
            unusable |= shape.Outcome >= Outcome.Inconclusive;
            due |= shape.Outcome is Outcome.Positive or Outcome.Inconclusive;
            runs[count++] = new(row.Code, dayNumber, row.Seconds, row.Record, FollowUp.None);
        }

        if (count == 0)
        {
            // Somebody may have negative runs elsewhere of whom none of the rows here is counted.
            if (elsewhere is not null && !elsewhere.IsWhole(rows[0].Person)) audits?.EndPerson([], shapes, elsewhere.Negatives(rows[0].Person));
            return;
        }

        var counted = runs.AsSpan(0, count);
        Link(start, length, counted, due);
        if (!inOrder) SortByDay(counted);
        if (unusable) CountRepeats(counted);
        if (due && count > 1) FindRetests(start, length, counted);
        if (elsewhere is not null && !elsewhere.IsWhole(rows[0].Person))
        {
            checks.TakePairs(counted, shapes);
            foreach (ref readonly var run in counted)
            {
                ref readonly var shape = ref shapes[run.Code];
                if (run.FollowUp is (FollowUp.Confirmed or FollowUp.Refuted) && shape.Outcome == Outcome.Positive) SettledElsewhere.Add(new(rows[0].Person, shape.Site, shape.Lot, run.DayNumber, run.FollowUp == FollowUp.Confirmed));
            }

            audits?.EndPerson(counted, shapes, elsewhere.Negatives(rows[0].Person));
            return;
        }

        Participation.Add((ulong)count, 1);
        for (var i = 1; i < count; i++)
        {
            Gaps.Add(((ulong)(uint)shapes[counted[i].Code].Site << Keys.DayBits) | (uint)(counted[i].DayNumber - counted[i - 1].DayNumber), 1);
        }

        checks.Take(counted, shapes);
        sums.Add(counted, shapes);
        audits?.EndPerson(counted, shapes);
    }

    // Offsets that change between two runs may turn local days against instants: what counts by day wants them in order of days.
    private static void SortByDay(Span<CountedRun> counted) => counted.Sort(static (a, b) =>
        a.DayNumber != b.DayNumber ? a.DayNumber.CompareTo(b.DayNumber)
        : a.Seconds != b.Seconds ? a.Seconds.CompareTo(b.Seconds)
        : a.Record.CompareTo(b.Record));

    private void FindTwins(ReadOnlySpan<LogEntry> rows)
    {
        removedHere.Clear();
        for (var i = 1; i < rows.Length; i++)
        {
            if (rows[i].Seconds != rows[i - 1].Seconds) continue;
            var start = i - 1;
            while (i < rows.Length && rows[i].Seconds == rows[start].Seconds) i++;
            FindTwins(rows[start..i], dateOnly: false);
            FindTwins(rows[start..i], dateOnly: true);
        }
    }

    private void FindTwins(ReadOnlySpan<LogEntry> sameTime, bool dateOnly)
    {
        foreach (ref readonly var row in sameTime)
        {
            ref readonly var shape = ref shapes[row.Code];
            if (!shape.HasScreenId && shape.DateOnly == dateOnly) twins.Add(row.Meaning, row.Record);
        }

        twins.Find((record, first) =>
        {
            if (DuplicateRule.IsProof(hasScreenId: false, hasTimeOfDay: !dateOnly))
            {
                removedHere.Add(record);
                Removed.Add(new(ExportKind.Screening, record, CountingDiagnostics.Duplicate, first));
            }
            else
            {
                PossibleDuplicates.Add(record);
            }
        });
    }

    private void Link(int start, int length, Span<CountedRun> counted, bool due)
    {
        if (length == 0 && !due) return;
        events.Clear();
        eventRuns.Clear();
        for (var i = 0; i < counted.Length; i++)
        {
            ref readonly var shape = ref shapes[counted[i].Code];
            // Without specimens each run stands for itself.
            if (length == 0 && shape.Outcome is not (Outcome.Positive or Outcome.Inconclusive)) continue;
            events.Add(new(new(counted[i].Seconds + RunCounter.EarliestInstant, shape.OffsetMinutes, shape.DateOnly), shape.Outcome));
            eventRuns.Add(i);
        }

        var found = specimens.Events.AsSpan(start, length);
        linkage.Link(CollectionsMarshal.AsSpan(events), found);
        for (var i = 0; i < events.Count; i++)
        {
            ref var run = ref counted[eventRuns[i]];
            run.FollowUp = linkage.FollowUps[i];
            ref readonly var shape = ref shapes[run.Code];
            if (run.FollowUp != FollowUp.None)
            {
                AddResult(run, events[i], linkage.Settling[i], start);
                if (shape.Outcome != Outcome.Negative) AddChanges(run, events[i].Time, start, length);
            }

            if (linkage.Cases[i]) Cases.Add(Keys.Shape(run.Code, run.DayNumber), 1);
            if (length > 0 && shape.Outcome is Outcome.Positive or Outcome.Inconclusive) checks.TakeDue(events[i].Time, found);
            if (!linkage.Isolated[i]) continue;
            var known = SettlementRule.KnownWithinIsolation(events[i].Time, found, specimens.KnownDays.AsSpan(start, length), policy.IsolationDays ?? 0);
            Isolated.Add(Keys.Conduct(ConductKind.WithinIsolation, shape.Site, shape.Lot, known ?? run.DayNumber), 1);
            checks.Isolated.Add(run.Record);
        }

        foreach (var intervalCase in linkage.IntervalCases)
        {
            var run = counted[eventRuns[intervalCase.Run]];
            IntervalCases.Add(((ulong)(uint)shapes[run.Code].Site << Keys.DayBits) | (uint)intervalCase.Days, 1);
        }

        AuditsWithRun += linkage.AuditsWithRun;
        SettlingSpecimens += linkage.SettlingSpecimens;
    }

    private void AddResult(in CountedRun run, RunEvent happened, int settling, int start)
    {
        FollowUps.Add(Keys.Shape(run.Code, run.DayNumber, run.FollowUp), 1);
        int? minutes = null;
        var (wholeDays, stratum) = (false, 0);
        if (settling >= 0)
        {
            var specimen = specimens.Events[start + settling];
            stratum = specimens.Rows[start + settling].Stratum;
            if (run.FollowUp is FollowUp.Missed or FollowUp.Agreed) audits!.AddAudited(run.Code, stratum, run.FollowUp == FollowUp.Missed);
            if (run.FollowUp is FollowUp.Confirmed or FollowUp.Refuted)
            {
                minutes = happened.Time.MinutesTo(specimen.Time);
                wholeDays = happened.Time.WholeDaysTo(specimen.Time);
            }
        }

        Results.Add(new(run.Record, run.Code, run.DayNumber, run.FollowUp, minutes, wholeDays, stratum));
    }

    private void AddChanges(in CountedRun run, Moment time, int start, int length)
    {
        changes.Clear();
        SettlementRule.FindChanges(time, window, specimens.Events.AsSpan(start, length), specimens.KnownDays.AsSpan(start, length), clock, changes);
        foreach (var change in changes)
        {
            var (before, after) = (Minutes(change.Before, change.SettlingBefore), Minutes(change.After, change.SettlingAfter));
            if (change.Before != change.After || before != after) Changes.Add(new(run.Record, change.Known, change.Before, before, change.After, after));
        }

        int? Minutes(FollowUp followUp, int settling) =>
            followUp is FollowUp.Confirmed or FollowUp.Refuted ? time.MinutesTo(specimens.Events[start + settling].Time) : null;
    }

    private void CountRepeats(ReadOnlySpan<CountedRun> counted)
    {
        for (var i = 0; i < counted.Length;)
        {
            var start = i;
            while (i < counted.Length && counted[i].DayNumber == counted[start].DayNumber) i++;
            Gather(counted[start..i]);
            if (done.Length < events.Count) done = new bool[2 * events.Count];
            if (RepeatRule.DueAndDone(CollectionsMarshal.AsSpan(events), done) == 0) continue;
            for (var k = 0; k < events.Count; k++)
            {
                if (!events[k].Outcome.IsUnusable()) continue;
                Repeats.Add(Keys.Repeat(shapes[counted[start + k].Code].Site, counted[start].DayNumber, events[k].Outcome, done[k]), 1);
            }
        }
    }

    private void FindRetests(int start, int length, ReadOnlySpan<CountedRun> counted)
    {
        for (var i = 0; i < counted.Length;)
        {
            var first = i;
            while (i < counted.Length && counted[i].DayNumber == counted[first].DayNumber) i++;
            if (i - first == 1) continue;
            Gather(counted[first..i]);
            if (!RetestRule.Find(CollectionsMarshal.AsSpan(events), specimens.Events.AsSpan(start, length), out var positive, out var retest)) continue;
            ref readonly var run = ref counted[first + positive];
            Retests.Add(new(run.Code, run.DayNumber, run.FollowUp, counted[first + retest].Code));
        }
    }

    private void Gather(ReadOnlySpan<CountedRun> day)
    {
        events.Clear();
        foreach (ref readonly var run in day)
        {
            ref readonly var shape = ref shapes[run.Code];
            events.Add(new(new(run.Seconds + RunCounter.EarliestInstant, shape.OffsetMinutes, shape.DateOnly), shape.Outcome));
        }
    }
}
