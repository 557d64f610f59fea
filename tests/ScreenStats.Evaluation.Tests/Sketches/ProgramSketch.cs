using System.Collections.Immutable;
using ScreenStats.Counting.Cubes;

namespace ScreenStats.Evaluation.Tests.Sketches;

/// <summary>A small program written down run by run. Every run is another person's, so that the cubes agree with one another.</summary>
internal sealed class ProgramSketch
{
    public static readonly DateOnly FirstDay = new(2026, 1, 5);

    private readonly List<ScreenCell> screens = [];
    private readonly List<OperatorCell> operators = [];
    private readonly List<NotableRun> notable = [];
    private readonly List<AuditCell> audits = [];
    private readonly List<CaseCell> cases = [];
    private readonly List<DelayCell> delays = [];
    private readonly List<IntervalCaseCell> intervalCases = [];
    private readonly List<RetestCell> retests = [];
    private readonly List<SpecimenCell> specimens = [];
    private bool confirmatory = true;
    private StratumOrigin origin = StratumOrigin.WholeProgram;

    public ReportPeriod Period { get; init; } = ReportPeriod.Week;

    public ProgramSketch Runs(
        Outcome outcome, long runs, FollowUp followUp = FollowUp.None, string site = "North", string lot = "A1", int day = 0, string person = Levels.None)
    {
        if (runs == 0) return this;
        var date = FirstDay.AddDays(day);
        screens.Add(new ScreenCell(site, lot, date, Specimen.NotRecorded, CollectedBy.NotRecorded, outcome, followUp, runs));
        operators.Add(new OperatorCell(person, site, date, outcome, followUp, runs));
        if (outcome != Outcome.Negative)
        {
            for (var run = 0L; run < runs; run++)
            {
                notable.Add(new NotableRun(date.ToDateTime(default), true, site, lot, Levels.None, person, Specimen.NotRecorded, CollectedBy.NotRecorded, outcome, followUp, null, null));
            }
        }

        if (followUp is FollowUp.Missed or FollowUp.Agreed || (followUp == FollowUp.Unresolved && outcome == Outcome.Negative))
        {
            audits.Add(new AuditCell(site, lot, date, Levels.None, followUp, runs));
        }

        if (followUp == FollowUp.Confirmed) cases.Add(new CaseCell(site, lot, date, outcome, runs));
        return this;
    }

    public ProgramSketch Delay(DelayKind kind, int? hours, long count = 1, string site = "North", bool wholeDays = false)
    {
        delays.Add(new DelayCell(kind, kind == DelayKind.RunToSpecimen ? site : "", hours * 60, wholeDays, count));
        return this;
    }

    public ProgramSketch IntervalCases(int days, long count)
    {
        intervalCases.Add(new IntervalCaseCell("North", days, count));
        return this;
    }

    /// <summary>Pairs of a positive run, which must be among <see cref="Runs"/>, and a retest.</summary>
    public ProgramSketch Retests(
        Outcome retest, long pairs, FollowUp followUp = FollowUp.Confirmed, string site = "North", string lot = "A1", int day = 0, string? retestLot = null)
    {
        retests.Add(new RetestCell(site, lot, FirstDay.AddDays(day), retestLot ?? lot, retest, followUp, pairs));
        return this;
    }

    public ProgramSketch Specimens(SpecimenReason reason, int positive, int negative, int indeterminate, int rejected, long persons)
    {
        specimens.Add(new SpecimenCell(reason, positive, negative, indeterminate, rejected, persons));
        return this;
    }

    public ProgramSketch WithoutConfirmatory()
    {
        confirmatory = false;
        return this;
    }

    public Tally Tally() => Counting.Cubes.Tally.FromCells(new TallyCells
    {
        Period = Period,
        HasConfirmatory = confirmatory,
        ReportingLagHours = 48,
        DataAsOf = screens.Count == 0 ? null : screens.Max(cell => cell.Day).ToDateTime(default),
        Screens = [.. screens],
        Operators = [.. operators],
        Notable = [.. notable],
        Persons = [.. Persons()],
        Participation = screens.Count == 0 ? [] : [new ParticipationCell(1, screens.Sum(cell => cell.Runs))],
        Audits = [.. audits.Select(cell => cell with { Stratum = Stratum(cell.Site) })],
        AuditStrata = audits.Count == 0 ? [] : [.. Strata()],
        AuditProducts = audits.Count == 0 ? [] : [.. Products()],
        Cases = [.. cases],
        Delays = [.. delays],
        IntervalCases = [.. intervalCases],
        Retests = [.. retests],
        Specimens = [.. specimens],
    });

    /// <summary>Every site is a sampling stratum of its own (by its name, or with a stated number of negative runs); without, all audits are one draw.</summary>
    public ProgramSketch Strata(StratumOrigin by)
    {
        origin = by;
        return this;
    }

    private string Stratum(string site) => origin == StratumOrigin.WholeProgram ? Levels.None : site;

    private string Place(string site) => origin switch
    {
        StratumOrigin.WholeProgram or StratumOrigin.Unexplained => Levels.None,
        StratumOrigin.StatedNumber => "",
        _ => screens.Any(cell => cell.Site == site && Is(cell, AuditTotal.Missed, AuditTotal.Agreed)) ? site : "",
    };

    private IEnumerable<AuditStratumCell> Strata() => screens
        .GroupBy(cell => origin == StratumOrigin.StatedNumber ? cell.Site : Place(cell.Site))
        .Where(stratum => stratum.Key == Levels.None || stratum.Key.Length > 0 && stratum.Any(cell => Is(cell, AuditTotal.Missed, AuditTotal.Agreed)))
        .Select(stratum => new AuditStratumCell(stratum.Key, origin, stratum.Where(cell => Is(cell, AuditTotal.Negatives)).Sum(cell => cell.Runs)));

    private IEnumerable<AuditProductCell> Products()
    {
        yield return new AuditProductCell("", AuditTotal.Persons, "", AuditTotal.Persons, screens.Where(cell => Is(cell, AuditTotal.Positives, AuditTotal.Negatives)).Sum(cell => cell.Runs));
        foreach (var total in Enum.GetValues<AuditTotal>()[1..])
        {
            foreach (var cell in screens.Where(cell => Is(cell, total)))
            {
                var audited = total is AuditTotal.Missed or AuditTotal.Agreed;
                var (place, drawn) = (Place(cell.Site), origin == StratumOrigin.StatedNumber && audited ? cell.Site : Place(cell.Site));
                yield return new AuditProductCell("", AuditTotal.Persons, drawn, total, cell.Runs);
                yield return new AuditProductCell(drawn, total, drawn, total, cell.Runs);
                var whole = total <= AuditTotal.Refuted ? AuditTotal.Positives : AuditTotal.Negatives;
                if (total != whole) yield return new AuditProductCell(place, whole, drawn, total, cell.Runs);
            }
        }
    }

    private static bool Is(ScreenCell cell, params ReadOnlySpan<AuditTotal> totals)
    {
        foreach (var total in totals)
        {
            var fits = total switch
            {
                AuditTotal.Positives => cell.Outcome == Outcome.Positive,
                AuditTotal.Confirmed => cell.Outcome == Outcome.Positive && cell.FollowUp == FollowUp.Confirmed,
                AuditTotal.Refuted => cell.Outcome == Outcome.Positive && cell.FollowUp == FollowUp.Refuted,
                AuditTotal.Negatives => cell.Outcome == Outcome.Negative,
                AuditTotal.Missed => cell.FollowUp == FollowUp.Missed,
                _ => cell.FollowUp == FollowUp.Agreed,
            };
            if (fits) return true;
        }

        return false;
    }

    private IEnumerable<PersonCell> Persons()
    {
        foreach (var measure in Enum.GetValues<PersonMeasure>())
        {
            if (Sum(PersonScope.Program, "", null, measure, screens) is { } program) yield return program;
            foreach (var site in screens.GroupBy(cell => cell.Site))
            {
                if (Sum(PersonScope.Site, site.Key, null, measure, site) is { } sum) yield return sum;
            }

            foreach (var lot in screens.GroupBy(cell => cell.Lot))
            {
                if (Sum(PersonScope.Lot, lot.Key, null, measure, lot) is { } sum) yield return sum;
            }

            foreach (var start in screens.GroupBy(cell => Period.Start(cell.Day)))
            {
                if (Sum(PersonScope.Period, "", start.Key, measure, start) is { } period) yield return period;
            }

            foreach (var week in screens.GroupBy(cell => ReportPeriod.Week.Start(cell.Day)))
            {
                if (Sum(PersonScope.Week, "", week.Key, measure, week) is { } sum) yield return sum;
                foreach (var site in week.GroupBy(cell => cell.Site))
                {
                    if (Sum(PersonScope.SiteWeek, site.Key, week.Key, measure, site) is { } siteWeek) yield return siteWeek;
                }
            }
        }
    }

    private static PersonCell? Sum(PersonScope scope, string level, DateOnly? start, PersonMeasure measure, IEnumerable<ScreenCell> cells)
    {
        long trials = 0, events = 0;
        foreach (var cell in cells)
        {
            var (trial, happened) = Classify(measure, cell.Outcome, cell.FollowUp);
            if (!trial) continue;
            trials += cell.Runs;
            if (happened) events += cell.Runs;
        }

        return trials == 0 ? null : new PersonCell(scope, level, start, measure, trials, events, trials, events, trials, events, events);
    }

    private static (bool Trial, bool Event) Classify(PersonMeasure measure, Outcome outcome, FollowUp followUp) => measure switch
    {
        PersonMeasure.Positivity => (outcome is Outcome.Negative or Outcome.Positive, outcome == Outcome.Positive),
        PersonMeasure.InvalidRuns => (true, outcome is Outcome.Inconclusive or Outcome.Invalid),
        PersonMeasure.PredictiveValue => (
            outcome == Outcome.Positive && followUp is FollowUp.Confirmed or FollowUp.Refuted, followUp == FollowUp.Confirmed),
        _ => (outcome is Outcome.Negative or Outcome.Positive, outcome == Outcome.Positive && followUp == FollowUp.Refuted),
    };
}
