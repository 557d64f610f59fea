using ScreenStats.Counting.Replay;

namespace ScreenStats.Counting.Cubes;

/// <summary>
/// Everything that is counted of a program, as named sparse cubes in canonical order. Holds no row and no person.
/// </summary>
public sealed class Tally
{
    /// <summary>The version of the cubes' layout.</summary>
    public const int LayoutVersion = 4;

    private Tally(TallyCells cells) => Cells = cells;

    /// <summary>The cells, merged and in canonical order.</summary>
    public TallyCells Cells { get; }

    /// <summary>First local day with a counted run; null where nothing was counted.</summary>
    public DateOnly? FirstDay => Cells.Screens.IsEmpty ? null : Cells.Screens.Min(cell => cell.Day);

    /// <summary>Last local day with a counted run; null where nothing was counted.</summary>
    public DateOnly? LastDay => Cells.Screens.IsEmpty ? null : Cells.Screens.Max(cell => cell.Day);

    /// <summary>
    /// The one door for every source: merges equal cells, sorts them and checks that the cubes agree with one another.
    /// </summary>
    /// <remarks>
    /// Cells of equal coordinates are added up (sums over people too: sources that are merged must share no person); cells that count
    /// nothing are left out, except in the ledger. Order is ordinal, coordinate by coordinate, so that equal contents are equal sequences.
    /// Checked: operators, notable runs, settlements, audits with their strata and products, person sums of every scope, participation, gaps and the ledger against the screens, the ledger
    /// against the specimens; cases, repeats, retests, conduct, kits and control runs within what they are part of; that no site has two regions. The ledger is checked only where it has cells of the screening export.
    /// </remarks>
    /// <param name="cells">The cells, in any order.</param>
    /// <returns>The tally.</returns>
    /// <exception cref="ArgumentException">The cubes disagree, or a cell is impossible; the message names the cubes and by how much.</exception>
    public static Tally FromCells(TallyCells cells)
    {
        var canonical = cells with
        {
            Screens = CellOrder.Canonical(cells.Screens, CellOrder.Compare, static (a, b) => a with { Runs = a.Runs + b.Runs }, static cell => cell.Runs == 0),
            Operators = CellOrder.Canonical(cells.Operators, CellOrder.Compare, static (a, b) => a with { Runs = a.Runs + b.Runs }, static cell => cell.Runs == 0),
            Notable = CellOrder.Canonical(cells.Notable, CellOrder.Compare, null, static _ => false),
            Persons = CellOrder.Canonical(cells.Persons, CellOrder.Compare, Add, static cell => cell.Persons == 0),
            Participation = CellOrder.Canonical(cells.Participation, CellOrder.Compare, static (a, b) => a with { Persons = a.Persons + b.Persons }, static cell => cell.Persons == 0),
            Cases = CellOrder.Canonical(cells.Cases, CellOrder.Compare, static (a, b) => a with { Cases = a.Cases + b.Cases }, static cell => cell.Cases == 0),
            Gaps = CellOrder.Canonical(cells.Gaps, CellOrder.Compare, static (a, b) => a with { Count = a.Count + b.Count }, static cell => cell.Count == 0),
            Delays = CellOrder.Canonical(cells.Delays, CellOrder.Compare, static (a, b) => a with { Count = a.Count + b.Count }, static cell => cell.Count == 0),
            Audits = CellOrder.Canonical(cells.Audits, CellOrder.Compare, static (a, b) => a with { Runs = a.Runs + b.Runs }, static cell => cell.Runs == 0),
            AuditStrata = CellOrder.Canonical(cells.AuditStrata, CellOrder.Compare, static (a, b) => a with { Negatives = a.Origin == StratumOrigin.StatedNumber ? Math.Max(a.Negatives, b.Negatives) : a.Negatives + b.Negatives }, static _ => false),
            AuditProducts = CellOrder.Canonical(cells.AuditProducts, CellOrder.Compare, static (a, b) => a with { Products = a.Products + b.Products }, static cell => cell.Products == 0),
            IntervalCases = CellOrder.Canonical(cells.IntervalCases, CellOrder.Compare, static (a, b) => a with { Count = a.Count + b.Count }, static cell => cell.Count == 0),
            Conduct = CellOrder.Canonical(cells.Conduct, CellOrder.Compare, static (a, b) => a with { Runs = a.Runs + b.Runs }, static cell => cell.Runs == 0),
            Repeats = CellOrder.Canonical(cells.Repeats, CellOrder.Compare, static (a, b) => a with { Due = a.Due + b.Due, Done = a.Done + b.Done }, static cell => cell.Due == 0 && cell.Done == 0),
            Retests = CellOrder.Canonical(cells.Retests, CellOrder.Compare, static (a, b) => a with { Pairs = a.Pairs + b.Pairs }, static cell => cell.Pairs == 0),
            Specimens = CellOrder.Canonical(cells.Specimens, CellOrder.Compare, static (a, b) => a with { Persons = a.Persons + b.Persons }, static cell => cell.Persons == 0),
            Controls = CellOrder.Canonical(cells.Controls, CellOrder.Compare, static (a, b) => a with { Runs = a.Runs + b.Runs }, static cell => cell.Runs == 0),
            Settlements = CellOrder.Canonical(cells.Settlements, CellOrder.Compare, static (a, b) => a with { Runs = a.Runs + b.Runs }, static cell => cell.Runs == 0),
            Kits = CellOrder.Canonical(cells.Kits, CellOrder.Compare, static (a, b) => a with { Runs = a.Runs + b.Runs }, static cell => cell.Runs == 0),
            Headcount = CellOrder.Canonical(cells.Headcount, CellOrder.Compare, static (a, b) => a with { Eligible = a.Eligible + b.Eligible }, static _ => false),
            Sites = CellOrder.Canonical(cells.Sites, CellOrder.Compare, static (a, _) => a, static _ => false),
            Completeness = CellOrder.Canonical(cells.Completeness, CellOrder.Compare, static (a, b) => a with { Rows = a.Rows + b.Rows, Recorded = a.Recorded + b.Recorded }, static _ => false),
            Ledger = CellOrder.Canonical(cells.Ledger, CellOrder.Compare, static (a, b) => a with { Rows = a.Rows + b.Rows }, static _ => false),
            Diagnostics = cells.Diagnostics.IsDefault ? [] : cells.Diagnostics,
        };
        CubeAgreement.Check(canonical);
        return new(canonical);
    }

    /// <summary>
    /// What was known at the end of a day: the part of the tally that monitoring needs, from runs of no later day and specimens reported by then.
    /// </summary>
    /// <param name="day">Local day, whose end is looked back from.</param>
    /// <returns>The cubes as of then.</returns>
    /// <exception cref="InvalidOperationException">The tally has follow-ups but no <see cref="TallyCells.Settlements"/>: its source does not tell when they became known.</exception>
    public TallyAsOf AsOf(DateOnly day) => TallyReplay.AsOf(Cells, day);

    private static PersonCell Add(PersonCell a, PersonCell b) => a with
    {
        Persons = a.Persons + b.Persons,
        PersonsWithEvent = a.PersonsWithEvent + b.PersonsWithEvent,
        Trials = a.Trials + b.Trials,
        Events = a.Events + b.Events,
        TrialsSquared = a.TrialsSquared + b.TrialsSquared,
        TrialsTimesEvents = a.TrialsTimesEvents + b.TrialsTimesEvents,
        EventsSquared = a.EventsSquared + b.EventsSquared,
    };
}
