using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Ledger;
using ScreenStats.Counting.Programs;

namespace ScreenStats.Records.Tests.PersonLog;

/// <summary>
/// The counting rules once more, slowly and obviously: every row against every row, over lists. Uses nothing of the code under test but
/// the cells it fills.
/// </summary>
internal sealed class ObviousCounter
{
    private readonly SmallProgram program;
    private readonly PolicySettings policy;
    private readonly List<Run> runs = [];
    private readonly List<Swab> swabs = [];

    public ObviousCounter(SmallProgram program)
    {
        this.program = program;
        policy = program.Settings.Policy;
        Count();
    }

    public List<(int Record, string Code, int First)> Removed { get; } = [];

    public List<(int Record, int First)> RemovedSpecimens { get; } = [];

    public int PossibleDuplicates { get; private set; }

    public int AuditsWithoutRun { get; private set; }

    public TallyCells Cells { get; private set; } = new();

    private sealed class Run(TestRun row, int record)
    {
        public TestRun Row => row;
        public int Record => record;
        public DateTime Utc => row.Local.AddMinutes(-row.Offset);
        public DateOnly Day => DateOnly.FromDateTime(row.Local);
        public FollowUp FollowUp { get; set; }
        public Swab? Settling { get; set; }
        public List<Swab> Audits { get; } = [];
    }

    private sealed class Swab(TestSpecimen row, int record)
    {
        public TestSpecimen Row => row;
        public int Record => record;
        public DateTime Utc => row.Local.AddMinutes(-row.Offset);
        public DateOnly Day => DateOnly.FromDateTime(row.Local);
        public bool Positive => row.Result == ConfirmatoryResult.Positive;
        public bool Conclusive => row.Result is ConfirmatoryResult.Positive or ConfirmatoryResult.Negative;
    }

    private void Count()
    {
        var ledger = Rows();
        Specimens();
        Link();
        var counted = runs;
        var people = counted.GroupBy(run => run.Row.Person).ToList();
        Cells = new TallyCells
        {
            Period = program.Settings.Report.Period,
            HasConfirmatory = program.Specimens is not null,
            Ledger = ledger,
            Screens = [.. counted.GroupBy(run => (run.Row.Site, run.Row.Lot, run.Day, run.Row.Specimen, run.Row.Collection, run.Row.Outcome, run.FollowUp, Occasion: OccasionOf(run)))
                .Select(g => new ScreenCell(g.Key.Site, g.Key.Lot, g.Key.Day, g.Key.Specimen, g.Key.Collection, g.Key.Outcome, g.Key.FollowUp, g.Count(), g.Key.Occasion))],
            Operators = [.. counted.GroupBy(run => (run.Row.Operator, run.Row.Site, run.Day, run.Row.Outcome, run.FollowUp, Occasion: OccasionOf(run)))
                .Select(g => new OperatorCell(g.Key.Operator, g.Key.Site, g.Key.Day, g.Key.Outcome, g.Key.FollowUp, g.Count(), g.Key.Occasion))],
            Notable = [.. counted.Where(run => run.Row.Outcome != Outcome.Negative).Select(Notable), .. controls.Select(Notable)],
            Settlements = [.. counted.SelectMany(Settlements)],
            Controls = [.. controls.GroupBy(run => (run.Row.Site, run.Row.Lot, run.Row.Kit, run.Day, Time: TimeOf(run), run.Row.Operator, run.Row.Control, run.Row.Outcome))
                .Select(g => new ControlCell(g.Key.Site, g.Key.Lot, g.Key.Kit, g.Key.Day, g.Key.Time, g.Key.Operator, g.Key.Control!.Value, g.Key.Outcome, g.Count()))],
            Persons = [.. Persons(people)],
            Participation = [.. people.GroupBy(person => person.Count()).Select(g => new ParticipationCell(g.Key, g.Count()))],
            Cases = [.. people.SelectMany(Cases)],
            Gaps = [.. people.SelectMany(Gaps)],
            Delays = [.. Delays()],
            Audits = [.. counted.Where(run => run.Audits.Count > 0).Select(run => new AuditCell(run.Row.Site, run.Row.Lot, run.Day, run.Settling!.Row.Stratum, run.FollowUp, 1))],
            AuditStrata = [.. AuditStrata()],
            AuditProducts = [.. AuditProducts(people)],
            IntervalCases = [.. IntervalCases()],
            Conduct = [.. Conduct()],
            Repeats = [.. people.SelectMany(person => person.GroupBy(run => run.Day)).SelectMany(Repeats)],
            Retests = [.. people.SelectMany(person => person.GroupBy(run => run.Day)).SelectMany(Retests)],
            Kits = [.. runs.Where(run => run.Row.Kit != "(none)").Select(run => new KitCell(run.Row.Site, run.Row.Lot, run.Day, 1))],
            Specimens = [.. swabs.GroupBy(swab => (swab.Row.Person, swab.Row.Reason)).Select(Specimens)],
            SettlingSpecimens = runs.Select(run => run.Settling).OfType<Swab>().Distinct().Count(),
        };
    }

    private readonly List<Run> controls = [];

    private List<LedgerCell> ledgerCells = [];

    private System.Collections.Immutable.ImmutableArray<LedgerCell> Rows()
    {
        var entries = new Dictionary<LedgerEntry, long>();
        foreach (var entry in Enum.GetValues<LedgerEntry>()) entries[entry] = 0;
        var all = program.Runs;
        for (var i = 0; i < all.Count; i++)
        {
            var row = all[i];
            LedgerEntry entry;
            var twin = all.FindIndex(earlier => earlier == row);
            var sameId = row.Id is null ? i : all.FindIndex(earlier => earlier.Id == row.Id);
            if (sameId < i && all[sameId] != row)
            {
                entry = LedgerEntry.SetAside;
                Removed.Add((i, "conflicting-screen-id", sameId));
            }
            else if (twin < i && (row.Id is not null || !row.DateOnly))
            {
                entry = LedgerEntry.Duplicate;
                Removed.Add((i, "duplicate", twin));
            }
            else
            {
                if (twin < i) PossibleDuplicates++;
                entry = row.Control is not null ? LedgerEntry.ControlRun
                    : row.Symptomatic ? LedgerEntry.KeptOutSymptomatic
                    : row.Exposed ? LedgerEntry.KeptOutExposed
                    : LedgerEntry.Counted;
                if (entry == LedgerEntry.Counted) runs.Add(new(row, i));
                if (entry == LedgerEntry.ControlRun) controls.Add(new(row, i));
            }

            entries[entry]++;
        }

        ledgerCells = [.. entries.Select(entry => new LedgerCell(ExportKind.Screening, entry.Key, entry.Value))];
        if (program.Specimens is { } specimens)
        {
            var duplicates = 0;
            for (var i = 0; i < specimens.Count; i++)
            {
                var twin = specimens.FindIndex(earlier => earlier == specimens[i]);
                if (twin < i && !specimens[i].DateOnly)
                {
                    duplicates++;
                    RemovedSpecimens.Add((i, twin));
                }
                else
                {
                    swabs.Add(new(specimens[i], i));
                }
            }

            ledgerCells.Add(new(ExportKind.Confirmatory, LedgerEntry.SetAside, 0));
            ledgerCells.Add(new(ExportKind.Confirmatory, LedgerEntry.Duplicate, duplicates));
            ledgerCells.Add(new(ExportKind.Confirmatory, LedgerEntry.Counted, specimens.Count - duplicates));
        }

        return [.. ledgerCells];
    }

    private double lagHours;
    private DateTime? asOf;

    private static bool ReportedTooEarly(Swab swab) => swab.Row.Reported is { } reported && LagHours(swab, reported) < 0;

    private static double LagHours(Swab swab, DateTime reported) => swab.Row.DateOnly || swab.Row.ReportedDateOnly
        ? 24.0 * (DateOnly.FromDateTime(reported).DayNumber - swab.Day.DayNumber)
        : (reported - swab.Row.Local).TotalHours;

    private void Specimens()
    {
        lagHours = LagHours(swabs);
        var reports = swabs.Where(swab => swab.Row.Reported is not null && !ReportedTooEarly(swab))
            .Select(swab => EndOf(swab.Row.Reported!.Value, swab.Row.ReportedDateOnly).AddMinutes(-swab.Row.Offset)).ToList();
        var collections = swabs.Select(swab => EndOf(swab.Row.Local, swab.Row.DateOnly).AddMinutes(-swab.Row.Offset)).ToList();
        asOf = (program.AsOf ?? program.Settings.DataAsOf) is { } stated ? stated.Local - (stated.Offset ?? TimeSpan.Zero)
            : reports.Count > 0 ? reports.Max()
            : collections.Count > 0 ? collections.Max()
            : null;
        if (program.Specimens is null) asOf = null;
    }

    /// <summary>The day at whose end the result of a swab is known.</summary>
    private DateOnly Known(Swab swab) => swab.Row.Reported is { } reported && !ReportedTooEarly(swab) ? DateOnly.FromDateTime(reported)
        : swab.Row.DateOnly ? swab.Day.AddDays((int)Math.Ceiling(policy.ReportLagHours / 24))
        : DateOnly.FromDateTime(swab.Row.Local.AddHours(policy.ReportLagHours));

    private static TimeOnly? TimeOf(Run run) => run.Row.DateOnly ? null : new(run.Row.Local.Hour, run.Row.Local.Minute);

    private static DateTime EndOf(DateTime local, bool dateOnly) => dateOnly ? local.Date.AddDays(1).AddSeconds(-1) : local;

    private static bool Within(Run run, Swab swab, double before, double after)
    {
        if (run.Row.DateOnly || swab.Row.DateOnly)
        {
            var days = swab.Day.DayNumber - run.Day.DayNumber;
            return -Math.Ceiling(before / 24) <= days && days <= Math.Ceiling(after / 24);
        }

        var hours = (swab.Utc - run.Utc).TotalHours;
        return -before <= hours && hours <= after;
    }

    private static Swab? Settle(IEnumerable<Swab> candidates)
    {
        var inOrder = candidates.OrderBy(swab => swab.Utc).ThenBy(swab => swab.Record).ToList();
        var first = inOrder.Find(swab => swab.Conclusive);
        if (first is null) return inOrder.FirstOrDefault();
        return inOrder.Find(swab => swab.Positive && (swab.Row.DateOnly || first.Row.DateOnly ? swab.Day == first.Day : swab.Utc == first.Utc)) ?? first;
    }

    private IEnumerable<Swab> SwabsOf(Run run) => swabs.Where(swab => swab.Row.Person == run.Row.Person);

    private void Link()
    {
        foreach (var run in runs.Where(run => policy.FollowUp.Contains(run.Row.Outcome)))
        {
            run.Settling = Settle(SwabsOf(run).Where(swab => Within(run, swab, policy.ConfirmBeforeHours, policy.ConfirmWithinHours)));
            run.FollowUp = run.Settling is { } swab
                ? swab.Positive ? FollowUp.Confirmed : swab.Conclusive ? FollowUp.Refuted : FollowUp.Unresolved
                : asOf is { } end && Closes(run).AddHours(lagHours) > end ? FollowUp.Pending : FollowUp.Unverified;
        }

        foreach (var swab in swabs.Where(swab => swab.Row.Reason == SpecimenReason.Audit))
        {
            var audited = runs.Where(run => run.Row.Person == swab.Row.Person && run.Row.Outcome == Outcome.Negative
                    && Within(run, swab, policy.ConfirmBeforeHours, policy.AuditWithinHours))
                .OrderBy(run => run.Utc).ThenBy(run => run.Record).LastOrDefault();
            if (audited is null) AuditsWithoutRun++;
            else audited.Audits.Add(swab);
        }

        foreach (var run in runs.Where(run => run.Audits.Count > 0))
        {
            run.Settling = Settle(run.Audits);
            run.FollowUp = run.Settling!.Positive ? FollowUp.Missed : run.Settling.Conclusive ? FollowUp.Agreed : FollowUp.Unresolved;
        }
    }

    private static int? Minutes(Run run) => Minutes(run, run.FollowUp, run.Settling);

    private static int? Minutes(Run run, FollowUp followUp, Swab? settling) => followUp is not (FollowUp.Confirmed or FollowUp.Refuted) ? null
        : run.Row.DateOnly || settling!.Row.DateOnly ? (settling!.Day.DayNumber - run.Day.DayNumber) * 1440
        : (int)Math.Floor((settling.Utc - run.Utc).TotalMinutes);

    // Every day is looked at, up to one on which every time is over.
    private IEnumerable<SettlementCell> Settlements(Run run)
    {
        if (!policy.FollowUp.Contains(run.Row.Outcome)) yield break;
        var (before, minutesBefore) = (FollowUp.Pending, (int?)null);
        var lastDay = runs.Select(other => other.Day).Concat(swabs.Select(Known)).Max().AddDays(40);
        for (var day = run.Day; day <= lastDay; day = day.AddDays(1))
        {
            var known = swabs.Where(swab => Known(swab) <= day).ToList();
            var settling = Settle(known.Where(swab => swab.Row.Person == run.Row.Person && Within(run, swab, policy.ConfirmBeforeHours, policy.ConfirmWithinHours)));
            var after = settling is { } swab ? swab.Positive ? FollowUp.Confirmed : swab.Conclusive ? FollowUp.Refuted : FollowUp.Unresolved
                : program.Specimens is not null && Closes(run).AddHours(LagHours(known)) > EndOf(day, known) ? FollowUp.Pending : FollowUp.Unverified;
            var minutes = Minutes(run, after, settling);
            if ((after, minutes) != (before, minutesBefore))
            {
                yield return new(run.Row.Local.AddSeconds(-run.Row.Local.Second), run.Row.DateOnly, run.Row.Site, run.Row.Lot, run.Row.Kit, run.Row.Operator, run.Row.Specimen,
                    run.Row.Collection, run.Row.Outcome, day, before, minutesBefore, after, minutes, 1, OccasionOf(run));
            }

            (before, minutesBefore) = (after, minutes);
        }
    }

    private DateTime Closes(Run run) => run.Row.DateOnly
        ? run.Row.Local.Date.AddDays(1 + Math.Ceiling(policy.ConfirmWithinHours / 24)).AddSeconds(-1).AddMinutes(-run.Row.Offset)
        : run.Utc.AddHours(policy.ConfirmWithinHours);

    private double LagHours(List<Swab> known)
    {
        var lags = known.Where(HasReport).Select(swab => LagHours(swab, swab.Row.Reported!.Value)).Order().ToList();
        return lags.Count == 0 ? policy.ReportLagHours : lags[(int)Math.Ceiling(0.95 * lags.Count) - 1];
    }

    private static bool HasReport(Swab swab) => swab.Row.Reported is not null && !ReportedTooEarly(swab);

    // Without a time zone in the offset of the latest report, else collection, known by then.
    private DateTime EndOf(DateOnly day, List<Swab> known)
    {
        var end = day.ToDateTime(new TimeOnly(23, 59, 59));
        if (program.Settings.TimeZone is not null) return end;
        var latest = known.Exists(HasReport)
            ? known.Where(HasReport).MaxBy(swab => (EndOf(swab.Row.Reported!.Value, swab.Row.ReportedDateOnly).AddMinutes(-swab.Row.Offset), swab.Row.Offset))
            : known.MaxBy(swab => (EndOf(swab.Row.Local, swab.Row.DateOnly).AddMinutes(-swab.Row.Offset), swab.Row.Offset));
        return end.AddMinutes(-latest?.Row.Offset ?? 0);
    }

    // The row's own word; where it has none, the days of its site's outbreaks, both ends included.
    private Occasion OccasionOf(Run run)
    {
        if (run.Row.Control is not null) return Occasion.Routine;
        if (run.Row.Outbreak is { } word) return word ? Occasion.Outbreak : Occasion.Routine;
        foreach (var outbreak in program.Settings.Outbreaks)
        {
            if (outbreak.Site == run.Row.Site && outbreak.From <= run.Day && (outbreak.To is null || run.Day <= outbreak.To)) return Occasion.Outbreak;
        }

        return Occasion.Routine;
    }

    private NotableRun Notable(Run run) => new(
        run.Row.Local.AddSeconds(-run.Row.Local.Second), run.Row.DateOnly, run.Row.Site, run.Row.Lot, run.Row.Kit, run.Row.Operator, run.Row.Specimen,
        run.Row.Collection, run.Row.Outcome, run.FollowUp, Minutes(run), run.Row.Control, OccasionOf(run));

    private IEnumerable<PersonCell> Persons(List<IGrouping<string, Run>> people)
    {
        foreach (var scope in Enum.GetValues<PersonScope>())
        {
            var parts = runs.Select(run => Part(scope, run)).Distinct();
            foreach (var (level, start) in parts)
            {
                foreach (var measure in Enum.GetValues<PersonMeasure>())
                {
                    var counts = people.Select(person => person.Where(run => Part(scope, run) == (level, start)).ToList())
                        .Select(of => (N: (long)of.Count(run => IsTrial(measure, run)), X: (long)of.Count(run => IsEvent(measure, run))))
                        .Where(count => count.N > 0).ToList();
                    yield return new(scope, level, start, measure, counts.Count, counts.Count(c => c.X > 0), counts.Sum(c => c.N), counts.Sum(c => c.X),
                        counts.Sum(c => c.N * c.N), counts.Sum(c => c.N * c.X), counts.Sum(c => c.X * c.X));
                }
            }
        }
    }

    private (string, DateOnly?) Part(PersonScope scope, Run run)
    {
        var monday = run.Day.AddDays(-((int)run.Day.DayOfWeek + 6) % 7);
        return scope switch
        {
            PersonScope.Program => ("", null),
            PersonScope.Site => (run.Row.Site, null),
            PersonScope.Lot => (run.Row.Lot, null),
            PersonScope.Week => ("", monday),
            PersonScope.SiteWeek => (run.Row.Site, monday),
            _ => ("", program.Settings.Report.Period switch
            {
                ReportPeriod.Day => run.Day,
                ReportPeriod.Week => monday,
                _ => new DateOnly(run.Day.Year, run.Day.Month, 1),
            }),
        };
    }

    private static bool IsValid(Run run) => run.Row.Outcome is Outcome.Negative or Outcome.Positive;

    private static bool IsTrial(PersonMeasure measure, Run run) => measure switch
    {
        PersonMeasure.InvalidRuns => true,
        PersonMeasure.PredictiveValue => run.Row.Outcome == Outcome.Positive && run.FollowUp is FollowUp.Confirmed or FollowUp.Refuted && run.Row.Outcome == Outcome.Positive,
        _ => IsValid(run),
    };

    private static bool IsEvent(PersonMeasure measure, Run run) => measure switch
    {
        PersonMeasure.Positivity => run.Row.Outcome == Outcome.Positive,
        PersonMeasure.InvalidRuns => !IsValid(run),
        PersonMeasure.PredictiveValue => run.Row.Outcome == Outcome.Positive && run.FollowUp == FollowUp.Confirmed,
        _ => run.Row.Outcome == Outcome.Positive && run.FollowUp == FollowUp.Refuted,
    };

    // The stratum of a run by where it was done; "" for none.
    private (Func<Run, string> OfRun, Func<Run, string> OfAudit, List<(string Name, StratumOrigin Origin, long? Stated)> Strata) Sampling()
    {
        var labels = swabs.Where(swab => swab.Row.Reason == SpecimenReason.Audit).Select(swab => swab.Row.Stratum).Distinct().ToList();
        var stated = program.Settings.Audits.Strata;
        var rows = program.Runs.Where(row => row is { Control: null, Symptomatic: false, Exposed: false }).ToList();
        if (stated.Length > 0 && labels.TrueForAll(label => stated.Any(stratum => stratum.Name == label)))
        {
            // The test programs describe sites and lots by whole names or a letter and a star.
            return (run => Drawn(run) && stated.Single(stratum => stratum.Name == run.Settling!.Row.Stratum).Negatives is null ? run.Settling!.Row.Stratum
                    : stated.FirstOrDefault(stratum => stratum.Negatives is null
                    && (stratum.Sites.IsEmpty || stratum.Sites.Contains(run.Row.Site))
                    && (stratum.Lots.IsEmpty || stratum.Lots.Any(lot => run.Row.Lot.StartsWith(lot[0]) && run.Row.Lot != "(none)"))
                    && (stratum.Collection is null || stratum.Collection == run.Row.Collection))?.Name ?? "",
                run => run.Settling!.Row.Stratum,
                [.. stated.Select(stratum => (stratum.Name, stratum.Negatives is null ? StratumOrigin.Patterns : StratumOrigin.StatedNumber, stratum.Negatives))]);
        }

        if (labels.TrueForAll(label => label != "(none)" && rows.Exists(row => row.Site == label)))
        {
            return (run => Drawn(run) ? run.Settling!.Row.Stratum : labels.Contains(run.Row.Site) ? run.Row.Site : "", run => run.Settling!.Row.Stratum, [.. labels.Select(label => (label, StratumOrigin.Site, (long?)null))]);
        }

        var whole = labels.Count == 1 && stated.IsEmpty;
        var name = whole ? labels[0] : "(none)";
        return (_ => name, _ => name, [(name, whole ? StratumOrigin.WholeProgram : StratumOrigin.Unexplained, null)]);
    }

    private static bool Drawn(Run run) => run.FollowUp is FollowUp.Missed or FollowUp.Agreed;

    private IEnumerable<AuditStratumCell> AuditStrata()
    {
        if (!runs.Exists(run => run.Audits.Count > 0)) yield break;
        var (ofRun, _, strata) = Sampling();
        foreach (var (name, origin, stated) in strata)
        {
            yield return new(name, origin, stated ?? runs.Count(run => run.Row.Outcome == Outcome.Negative && ofRun(run) == name));
        }
    }

    private List<AuditProductCell> AuditProducts(List<IGrouping<string, Run>> people)
    {
        if (!runs.Exists(run => run.Audits.Count > 0)) return [];
        var (ofRun, ofAudit, strata) = Sampling();
        List<string> names = ["", .. strata.Select(stratum => stratum.Name).Order(StringComparer.Ordinal)];
        var coordinates = names.SelectMany(name => Enum.GetValues<AuditTotal>().Select(total => (Name: name, Total: total)))
            .Where(at => at.Total != AuditTotal.Persons || at.Name.Length == 0).ToList();
        var cells = new List<AuditProductCell>();
        for (var i = 0; i < coordinates.Count; i++)
        {
            for (var j = i; j < coordinates.Count; j++)
            {
                var sum = people.Where(person => person.Any(IsValid)).Sum(person => Of(person, coordinates[i]) * Of(person, coordinates[j]));
                cells.Add(new(coordinates[i].Name, coordinates[i].Total, coordinates[j].Name, coordinates[j].Total, sum));
            }
        }

        return cells;

        long Of(IEnumerable<Run> person, (string Name, AuditTotal Total) at) => at.Total switch
        {
            AuditTotal.Persons => 1,
            AuditTotal.Positives => person.Count(run => run.Row.Outcome == Outcome.Positive && ofRun(run) == at.Name),
            AuditTotal.Confirmed => person.Count(run => run.Row.Outcome == Outcome.Positive && run.FollowUp == FollowUp.Confirmed && ofRun(run) == at.Name),
            AuditTotal.Refuted => person.Count(run => run.Row.Outcome == Outcome.Positive && run.FollowUp == FollowUp.Refuted && ofRun(run) == at.Name),
            AuditTotal.Negatives => person.Count(run => run.Row.Outcome == Outcome.Negative && ofRun(run) == at.Name),
            AuditTotal.Missed => person.Count(run => run.FollowUp == FollowUp.Missed && ofAudit(run) == at.Name),
            _ => person.Count(run => run.FollowUp == FollowUp.Agreed && ofAudit(run) == at.Name),
        };
    }

    private IEnumerable<CaseCell> Cases(IEnumerable<Run> person)
    {
        var confirmed = person.Where(run => run.FollowUp == FollowUp.Confirmed).OrderBy(run => run.Utc).ThenBy(run => run.Record).ToList();
        for (var i = 0; i < confirmed.Count; i++)
        {
            var run = confirmed[i];
            var earliest = run.Day.AddDays(-policy.EpisodeDays);
            var before = SwabsOf(run).Where(swab => swab.Positive && swab.Day >= earliest && IsBeforeWindow(run, swab));
            var sameFollowUp = confirmed.Take(i).Where(earlier => earlier.Settling!.Day >= earliest);
            if (!before.Any() && !sameFollowUp.Any()) yield return new(run.Row.Site, run.Row.Lot, run.Day, run.Row.Outcome, 1);
        }
    }

    private bool IsBeforeWindow(Run run, Swab swab) => run.Row.DateOnly || swab.Row.DateOnly
        ? swab.Day.DayNumber < run.Day.DayNumber - Math.Ceiling(policy.ConfirmBeforeHours / 24)
        : swab.Utc < run.Utc.AddHours(-policy.ConfirmBeforeHours);

    private static IEnumerable<GapCell> Gaps(IEnumerable<Run> person)
    {
        var inOrder = person.OrderBy(run => run.Day).ThenBy(run => run.Utc).ThenBy(run => run.Record).ToList();
        return inOrder.Skip(1).Select((run, i) => new GapCell(run.Row.Site, run.Day.DayNumber - inOrder[i].Day.DayNumber, 1));
    }

    private IEnumerable<DelayCell> Delays()
    {
        foreach (var run in runs.Where(run => run.Row.Outcome != Outcome.Negative && Minutes(run) is not null))
        {
            yield return new(DelayKind.RunToSpecimen, run.Row.Site, Minutes(run), run.Row.DateOnly || run.Settling!.Row.DateOnly, 1);
        }

        if (!swabs.Any(swab => swab.Row.Reported is not null && !ReportedTooEarly(swab))) yield break;
        foreach (var swab in swabs)
        {
            var days = swab.Row.DateOnly || swab.Row.ReportedDateOnly;
            yield return swab.Row.Reported is { } reported && !ReportedTooEarly(swab)
                ? new(DelayKind.SpecimenToReport, "", days
                    ? (DateOnly.FromDateTime(reported).DayNumber - swab.Day.DayNumber) * 1440
                    : (int)Math.Floor((reported - swab.Row.Local).TotalMinutes), days, 1)
                : new(DelayKind.SpecimenToReport, "", null, false, 1);
        }
    }

    private IEnumerable<IntervalCaseCell> IntervalCases()
    {
        foreach (var swab in swabs.Where(swab => swab.Positive && swab.Row.Reason != SpecimenReason.Audit))
        {
            var own = runs.Where(run => run.Row.Person == swab.Row.Person).ToList();
            if (own.Exists(run => run.Row.Outcome != Outcome.Negative && run.Settling == swab)) continue;
            var sameEpisode = swabs.Any(other => other.Positive && other.Row.Person == swab.Row.Person
                && (other.Utc < swab.Utc || (other.Utc == swab.Utc && other.Record < swab.Record))
                && other.Day >= swab.Day.AddDays(-policy.EpisodeDays));
            if (sameEpisode) continue;
            var last = own.Where(run => run.Row.DateOnly || swab.Row.DateOnly ? run.Day <= swab.Day : run.Utc <= swab.Utc)
                .OrderBy(run => run.Utc).ThenBy(run => run.Record).LastOrDefault();
            if (last?.Row.Outcome == Outcome.Negative) yield return new(last.Row.Site, Math.Max(0, swab.Day.DayNumber - last.Day.DayNumber), 1);
        }
    }

    private ScreenSettings? Device(string lot) =>
        program.Settings.Screens.FirstOrDefault(screen => lot != "(none)" && screen.Lots.Any(pattern => lot.StartsWith(pattern.TrimEnd('*'), StringComparison.Ordinal)))
        ?? program.Settings.Screens.FirstOrDefault(screen => screen.Lots.IsEmpty);

    private IEnumerable<ConductCell> Conduct()
    {
        foreach (var run in runs)
        {
            var device = Device(run.Row.Lot);
            if (run.Row.Expiry is { } expiry && run.Day > expiry) yield return new(ConductKind.ExpiredLot, run.Row.Site, run.Row.Lot, run.Day, 1);
            if (run.Row.Minutes is { } minutes && (minutes < device?.ReadFromMinutes || minutes > device?.ReadToMinutes)) yield return new(ConductKind.ReadOutsideWindow, run.Row.Site, run.Row.Lot, run.Day, 1);
            if (run.Row.Minutes is null && (device?.ReadFromMinutes is not null || device?.ReadToMinutes is not null)) yield return new(ConductKind.ReadingNotRecorded, run.Row.Site, run.Row.Lot, run.Day, 1);
            if (policy.IsolationDays is not { } days) continue;
            var isolating = SwabsOf(run).Where(swab => swab.Positive && (run.Row.DateOnly || swab.Row.DateOnly
                ? run.Day > swab.Day && run.Day <= swab.Day.AddDays(days)
                : run.Utc > swab.Utc && run.Utc <= swab.Utc.AddDays(days))).ToList();
            if (isolating.Count == 0) continue;
            var known = isolating.Min(Known);
            yield return new(ConductKind.WithinIsolation, run.Row.Site, run.Row.Lot, known > run.Day ? known : run.Day, 1);
        }

        foreach (var kit in runs.Where(run => run.Row.Kit != "(none)").GroupBy(run => (run.Row.Site, run.Row.Lot, run.Row.Kit)))
        {
            foreach (var run in kit.OrderBy(run => run.Day).Skip(Device(kit.Key.Lot)?.RunsPerKit ?? kit.Count()))
            {
                yield return new(ConductKind.BeyondKitContents, kit.Key.Site, kit.Key.Lot, run.Day, 1);
            }
        }
    }

    private static IEnumerable<RepeatCell> Repeats(IEnumerable<Run> personDay)
    {
        var day = personDay.OrderBy(run => run.Utc).ThenBy(run => run.Record).ToList();
        var unusable = day.Where(run => !IsValid(run)).ToList();
        var timed = day.TrueForAll(run => !run.Row.DateOnly);
        foreach (var run in unusable)
        {
            var done = timed ? run != day[^1] : unusable.Count < day.Count && run == unusable[0];
            yield return new(run.Row.Site, run.Day, run.Row.Outcome, 1, done ? 1 : 0);
        }
    }

    private IEnumerable<RetestCell> Retests(IEnumerable<Run> personDay)
    {
        var day = personDay.OrderBy(run => run.Utc).ThenBy(run => run.Record).ToList();
        var first = day.Find(run => run.Row.Outcome == Outcome.Positive);
        if (first is null || day.Exists(run => run.Row.DateOnly)) yield break;
        var later = day.Where(run => day.IndexOf(run) > day.IndexOf(first))
            .Where(run => !SwabsOf(first).Any(swab => !swab.Row.DateOnly && swab.Utc >= first.Utc && swab.Utc < run.Utc)).ToList();
        var retest = later.Find(IsValid) ?? later.FirstOrDefault();
        if (retest is not null) yield return new(first.Row.Site, first.Row.Lot, first.Day, retest.Row.Lot, retest.Row.Outcome, first.FollowUp, 1);
    }

    private static SpecimenCell Specimens(IEnumerable<Swab> ofOneReason)
    {
        var results = ofOneReason.ToLookup(swab => swab.Row.Result);
        int Count(ConfirmatoryResult result) => results[result].Count();
        return new(results.First().First().Row.Reason, Count(ConfirmatoryResult.Positive), Count(ConfirmatoryResult.Negative),
            Count(ConfirmatoryResult.Indeterminate), Count(ConfirmatoryResult.Rejected), 1);
    }
}
