using System.Collections.Immutable;
using System.Globalization;
using ScreenStats.Counting.Ledger;
using ScreenStats.Counting.Rules;

namespace ScreenStats.Counting.Cubes;

/// <summary>Checks that cubes which count the same runs in different ways agree. Levels are never named: they are text of the data.</summary>
internal static class CubeAgreement
{
    /// <exception cref="ArgumentException">Two cubes disagree, or a cell is impossible.</exception>
    public static void Check(TallyCells cells)
    {
        // Side by side, but the first in this order speaks, whichever finished first.
        Action<TallyCells>[] checks =
        [
            CellsArePossible, LedgerAddsUp, OperatorsAgree, NotableAgree, SettlementAgreement.Check, AuditsAgree, AuditProductAgreement.Check, PersonsAgree, ParticipationAgrees, SpecimensAgree, PartsAreWithin, SitesAgree,
        ];
        var found = new ArgumentException?[checks.Length];
        Parallel.For(0, checks.Length, at =>
        {
            try
            {
                checks[at](cells);
            }
            catch (ArgumentException disagreement)
            {
                found[at] = disagreement;
            }
        });
        if (Array.Find(found, disagreement => disagreement is not null) is { } first) throw first;
    }

    private static void CellsArePossible(TallyCells cells)
    {
        Counts("screens", cells.Screens, static cell => cell.Runs);
        Counts("operators", cells.Operators, static cell => cell.Runs);
        Counts("participation", cells.Participation, static cell => cell.Runs < 1 ? -1 : cell.Persons);
        Counts("cases", cells.Cases, static cell => cell.FoundThrough is Outcome.Positive or Outcome.Inconclusive ? cell.Cases : -1);
        Counts("gaps", cells.Gaps, static cell => cell.Days < 0 ? -1 : cell.Count);
        Counts("delays", cells.Delays, static cell => cell.Count);
        Counts("audits", cells.Audits, static cell => cell.Result is FollowUp.Missed or FollowUp.Agreed or FollowUp.Unresolved ? cell.Runs : -1);
        Counts("auditStrata", cells.AuditStrata, static cell => cell.Negatives);
        Counts("auditProducts", cells.AuditProducts, static cell => AuditProductAgreement.IsInOrder(cell) ? cell.Products : -1);
        Counts("intervalCases", cells.IntervalCases, static cell => cell.DaysSinceRun < 0 ? -1 : cell.Count);
        Counts("conduct", cells.Conduct, static cell => cell.Runs);
        Counts("repeats", cells.Repeats, static cell => cell.Done > cell.Due || !cell.Outcome.IsUnusable() ? -1 : cell.Done);
        Counts("retests", cells.Retests, static cell => IsPossible(Outcome.Positive, cell.FollowUp) ? cell.Pairs : -1);
        Counts("specimens", cells.Specimens, static cell =>
            cell.Positive < 0 || cell.Negative < 0 || cell.Indeterminate < 0 || cell.Rejected < 0 || cell.Specimens == 0 ? -1 : cell.Persons);
        Counts("controls", cells.Controls, static cell => cell.Runs);
        Counts("settlements", cells.Settlements, static cell => SettlementAgreement.IsPossible(cell) ? cell.Runs : -1);
        Counts("kits", cells.Kits, static cell => cell.Runs);
        Counts("headcount", cells.Headcount, static cell => cell.Eligible);
        Counts("completeness", cells.Completeness, static cell => cell.Recorded > cell.Rows ? -1 : cell.Recorded);
        Counts("ledger", cells.Ledger, static cell => cell.Rows);
        Counts("notable", cells.Notable, static cell => cell.Control is null ? cell.Outcome == Outcome.Negative ? -1 : 1 : cell.Occasion == Occasion.Routine ? 1 : -1);
        Counts("persons", cells.Persons, static cell =>
            cell.PersonsWithEvent > cell.Persons || cell.Persons > cell.Trials || cell.Events > cell.Trials || cell.PersonsWithEvent > cell.Events
            || cell.TrialsSquared < cell.Trials || cell.EventsSquared < cell.Events || cell.TrialsTimesEvents < cell.Events ? -1 : cell.PersonsWithEvent);
        Counts("screens", cells.Screens, static cell => IsPossible(cell.Outcome, cell.FollowUp) ? 0 : -1);
    }

    private static bool IsPossible(Outcome outcome, FollowUp followUp) => outcome switch
    {
        Outcome.Negative => followUp is FollowUp.None or FollowUp.Unresolved or FollowUp.Missed or FollowUp.Agreed,
        Outcome.Invalid => followUp is FollowUp.None,
        _ => followUp is not (FollowUp.Missed or FollowUp.Agreed),
    };

    private static void Counts<T>(string cube, ImmutableArray<T> cells, Func<T, long> count)
    {
        var impossible = cells.Count(cell => count(cell) < 0);
        if (impossible == 0) return;
        throw new ArgumentException(string.Create(CultureInfo.InvariantCulture,
            $"The cube {cube} has {impossible} impossible cells: negative counts, or coordinates that exclude each other."));
    }

    private static void LedgerAddsUp(TallyCells cells)
    {
        if (!cells.Ledger.Any(cell => cell.Export == ExportKind.Screening)) return;
        var counted = new Balance("ledger (counted)", "screens");
        var controls = new Balance("ledger (control-run)", "notable (control runs)");
        foreach (var cell in cells.Ledger)
        {
            if (cell.Export != ExportKind.Screening) continue;
            if (cell.Entry == LedgerEntry.Counted) counted.Left(0, cell.Rows);
            if (cell.Entry == LedgerEntry.ControlRun) controls.Left(0, cell.Rows);
        }

        counted.Right(0, cells.Screens.Sum(cell => cell.Runs));
        controls.Right(0, cells.Notable.Count(cell => cell.Control is not null));
        counted.MustBeEqual();
        controls.MustBeEqual();
    }

    private static void OperatorsAgree(TallyCells cells)
    {
        var (keys, balance) = (new LevelPairs(), new Balance("operators", "screens"));
        foreach (var cell in cells.Operators) balance.Left(keys.Key(cell.Site, "", cell.Day, Rest(cell.Outcome, cell.FollowUp, cell.Occasion)), cell.Runs);
        foreach (var cell in cells.Screens) balance.Right(keys.Key(cell.Site, "", cell.Day, Rest(cell.Outcome, cell.FollowUp, cell.Occasion)), cell.Runs);
        balance.MustBeEqual();
    }

    private static void NotableAgree(TallyCells cells)
    {
        var (keys, balance) = (new LevelPairs(), new Balance("notable", "screens"));
        foreach (var cell in cells.Notable)
        {
            if (cell.Control is null) balance.Left(keys.Key(cell.Site, cell.Lot, DateOnly.FromDateTime(cell.Minute), Rest(cell.Outcome, cell.FollowUp, cell.Occasion, cell.Specimen, cell.Collection)), 1);
        }

        foreach (var cell in cells.Screens)
        {
            if (cell.Outcome != Outcome.Negative) balance.Right(keys.Key(cell.Site, cell.Lot, cell.Day, Rest(cell.Outcome, cell.FollowUp, cell.Occasion, cell.Specimen, cell.Collection)), cell.Runs);
        }

        balance.MustBeEqual();
    }

    private static void AuditsAgree(TallyCells cells)
    {
        var (keys, balance) = (new LevelPairs(), new Balance("audits", "screens"));
        foreach (var cell in cells.Audits) balance.Left(keys.Key(cell.Site, cell.Lot, cell.Day, (int)cell.Result), cell.Runs);
        foreach (var cell in cells.Screens)
        {
            if (cell.Outcome == Outcome.Negative && cell.FollowUp != FollowUp.None) balance.Right(keys.Key(cell.Site, cell.Lot, cell.Day, (int)cell.FollowUp), cell.Runs);
        }

        balance.MustBeEqual();
    }

    // Every scope that has cells is checked; the program's sums must be there.
    private static void PersonsAgree(TallyCells cells)
    {
        var days = TrialsAndEvents(cells.Screens);
        var scopes = cells.Persons.Select(cell => cell.Scope).Append(PersonScope.Program).Distinct().Order().ToArray();
        foreach (var scope in scopes)
        {
            var (keys, balance) = (new LevelPairs(), new Balance($"persons ({scope})", "screens"));
            foreach (var cell in cells.Persons)
            {
                if (cell.Scope != scope) continue;
                var key = keys.Key(cell.Level, "", cell.PeriodStart ?? default, 2 * (int)cell.Measure);
                balance.Left(key, cell.Trials);
                balance.Left(key + 1, cell.Events);
            }

            foreach (var day in days)
            {
                var level = scope switch { PersonScope.Site or PersonScope.SiteWeek => day.Site, PersonScope.Lot => day.Lot, _ => "" };
                var start = scope switch
                {
                    PersonScope.Period => cells.Period.Start(day.Day),
                    PersonScope.Week or PersonScope.SiteWeek => ReportPeriods.Monday(day.Day),
                    _ => default,
                };
                var key = keys.Key(level, "", start, 0);
                for (var i = 0; i < day.Sums.Length; i++)
                {
                    if (day.Sums[i] != 0) balance.Right(key + (ulong)i, day.Sums[i]);
                }
            }

            balance.MustBeEqual();
        }
    }

    // Trials and events of the four measures by site, lot and day: the screens are in that order already.
    private static List<(string Site, string Lot, DateOnly Day, long[] Sums)> TrialsAndEvents(ImmutableArray<ScreenCell> screens)
    {
        var days = new List<(string Site, string Lot, DateOnly Day, long[] Sums)>();
        foreach (var cell in screens)
        {
            if (days.Count == 0 || days[^1].Day != cell.Day || days[^1].Lot != cell.Lot || days[^1].Site != cell.Site)
            {
                days.Add((cell.Site, cell.Lot, cell.Day, new long[2 * Measures.Length]));
            }

            var sums = days[^1].Sums;
            foreach (var measure in Measures)
            {
                var (trial, happened) = Classify(measure, cell.Outcome, cell.FollowUp);
                if (trial) sums[2 * (int)measure] += cell.Runs;
                if (trial && happened) sums[(2 * (int)measure) + 1] += cell.Runs;
            }
        }

        return days;
    }

    private static readonly PersonMeasure[] Measures = Enum.GetValues<PersonMeasure>();

    private static (bool Trial, bool Event) Classify(PersonMeasure measure, Outcome outcome, FollowUp followUp) => measure switch
    {
        PersonMeasure.Positivity => (outcome.IsValidTest(), outcome == Outcome.Positive),
        PersonMeasure.InvalidRuns => (true, outcome.IsUnusable()),
        PersonMeasure.PredictiveValue => (outcome == Outcome.Positive && followUp is FollowUp.Confirmed or FollowUp.Refuted, followUp == FollowUp.Confirmed),
        _ => (outcome.IsValidTest(), outcome == Outcome.Positive && followUp == FollowUp.Refuted),
    };

    private static void ParticipationAgrees(TallyCells cells)
    {
        var runs = new Balance("participation (runs)", "screens");
        runs.Left(0, cells.Participation.Sum(cell => cell.Runs * cell.Persons));
        runs.Right(0, cells.Screens.Sum(cell => cell.Runs));
        runs.MustBeEqual();
        var persons = new Balance("participation (people)", "persons");
        persons.Left(0, cells.Participation.Sum(cell => cell.Persons));
        persons.Right(0, cells.Persons.Where(cell => cell is { Scope: PersonScope.Program, Measure: PersonMeasure.InvalidRuns }).Sum(cell => cell.Persons));
        persons.MustBeEqual();
        var gaps = new Balance("gaps", "participation");
        gaps.Left(0, cells.Gaps.Sum(cell => cell.Count));
        gaps.Right(0, cells.Participation.Sum(cell => (cell.Runs - 1) * cell.Persons));
        gaps.MustBeEqual();
    }

    // As with the screens: only where the ledger speaks of the export.
    private static void SpecimensAgree(TallyCells cells)
    {
        if (cells.SettlingSpecimens is { } settling)
        {
            var all = cells.Specimens.Sum(cell => cell.Specimens * cell.Persons);
            var runs = cells.Screens.Where(cell => cell.FollowUp is not (FollowUp.None or FollowUp.Pending or FollowUp.Unverified)).Sum(cell => cell.Runs);
            if (settling < 0 || settling > all || settling > runs)
            {
                throw new ArgumentException(string.Create(CultureInfo.InvariantCulture,
                    $"settlingSpecimens is {settling}, and there are {all} specimens and {runs} runs that rest on one."));
            }
        }

        if (!cells.Ledger.Any(cell => cell.Export == ExportKind.Confirmatory)) return;
        var specimens = new Balance("specimens", "ledger (confirmatory, counted)");
        specimens.Left(0, cells.Specimens.Sum(cell => cell.Specimens * cell.Persons));
        specimens.Right(0, cells.Ledger.Where(cell => cell is { Export: ExportKind.Confirmatory, Entry: LedgerEntry.Counted }).Sum(cell => cell.Rows));
        specimens.MustBeEqual();
    }

    private static void PartsAreWithin(TallyCells cells)
    {
        var keys = new LevelPairs();
        var cases = new Balance("cases", "screens (confirmed)");
        var repeats = new Balance("repeats", "screens (inconclusive and invalid)");
        var retests = new Balance("retests", "screens (positive)");
        var conduct = new Balance("conduct", "screens");
        var controls = new Balance("notable (control runs)", "controls");
        var kits = new Balance("kits", "screens");
        foreach (var cell in cells.Kits) kits.Left(keys.Key(cell.Site, cell.Lot, cell.Day, 0), cell.Runs);
        foreach (var cell in cells.Cases) cases.Left(keys.Key(cell.Site, cell.Lot, cell.Day, (int)cell.FoundThrough), cell.Cases);
        foreach (var cell in cells.Repeats) repeats.Left(keys.Key(cell.Site, "", cell.Day, (int)cell.Outcome), cell.Due);
        foreach (var cell in cells.Retests) retests.Left(keys.Key(cell.Site, cell.Lot, cell.Day, (int)cell.FollowUp), cell.Pairs);
        foreach (var cell in cells.Conduct) conduct.Left(keys.Key(cell.Site, cell.Lot, default, (int)cell.Kind), cell.Runs);
        foreach (var cell in cells.Screens)
        {
            if (cell.FollowUp == FollowUp.Confirmed) cases.Right(keys.Key(cell.Site, cell.Lot, cell.Day, (int)cell.Outcome), cell.Runs);
            if (cell.Outcome.IsUnusable()) repeats.Right(keys.Key(cell.Site, "", cell.Day, (int)cell.Outcome), cell.Runs);
            if (cell.Outcome == Outcome.Positive) retests.Right(keys.Key(cell.Site, cell.Lot, cell.Day, (int)cell.FollowUp), cell.Runs);
            if (!cells.Kits.IsEmpty) kits.Right(keys.Key(cell.Site, cell.Lot, cell.Day, 0), cell.Runs);
            if (cells.Conduct.IsEmpty) continue;
            foreach (var kind in Enum.GetValues<ConductKind>()) conduct.Right(keys.Key(cell.Site, cell.Lot, default, (int)kind), cell.Runs);
        }

        foreach (var cell in cells.Notable)
        {
            if (cell.Control is { } expected) controls.Left(keys.Key(cell.Site, cell.Lot, DateOnly.FromDateTime(cell.Minute), Rest(cell.Outcome, (FollowUp)expected)), 1);
        }

        foreach (var cell in cells.Controls) controls.Right(keys.Key(cell.Site, cell.Lot, cell.Day, Rest(cell.Observed, (FollowUp)cell.Expected)), cell.Runs);
        cases.MustBeWithin();
        repeats.MustBeWithin();
        retests.MustBeWithin();
        conduct.MustBeWithin();
        controls.MustBeWithin();
        kits.MustBeWithin();
    }

    private static void SitesAgree(TallyCells cells)
    {
        for (var i = 1; i < cells.Sites.Length; i++)
        {
            if (cells.Sites[i].Site == cells.Sites[i - 1].Site) throw new ArgumentException("The cube sites gives a site two regions.");
        }
    }

    private static int Rest(Outcome outcome, FollowUp followUp, Occasion occasion = default, Specimen specimen = default, CollectedBy collection = default) =>
        (((((int)occasion << 3) | (int)specimen) << 2 | (int)collection) << 5) | ((int)outcome << 3) | (int)followUp;
}
