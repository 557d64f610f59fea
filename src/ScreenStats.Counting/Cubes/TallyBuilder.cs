using System.Runtime.InteropServices;

namespace ScreenStats.Counting.Cubes;

/// <summary>
/// Collects cells one by one for <see cref="Tally.FromCells"/>. Equal cells are added up as they come, so that it holds about as
/// many as there are distinct ones. Not safe for several threads.
/// </summary>
public sealed class TallyBuilder
{
    private readonly Accumulator<ScreenCell> screens = new(static cell => cell with { Runs = 0 }, static (a, b) => a with { Runs = a.Runs + b.Runs });
    private readonly Accumulator<OperatorCell> operators = new(static cell => cell with { Runs = 0 }, static (a, b) => a with { Runs = a.Runs + b.Runs });
    private readonly Accumulator<ParticipationCell> participation = new(static cell => cell with { Persons = 0 }, static (a, b) => a with { Persons = a.Persons + b.Persons });
    private readonly Accumulator<CaseCell> cases = new(static cell => cell with { Cases = 0 }, static (a, b) => a with { Cases = a.Cases + b.Cases });
    private readonly Accumulator<GapCell> gaps = new(static cell => cell with { Count = 0 }, static (a, b) => a with { Count = a.Count + b.Count });
    private readonly Accumulator<DelayCell> delays = new(static cell => cell with { Count = 0 }, static (a, b) => a with { Count = a.Count + b.Count });
    private readonly Accumulator<AuditCell> audits = new(static cell => cell with { Runs = 0 }, static (a, b) => a with { Runs = a.Runs + b.Runs });
    private readonly Accumulator<IntervalCaseCell> intervalCases = new(static cell => cell with { Count = 0 }, static (a, b) => a with { Count = a.Count + b.Count });
    private readonly Accumulator<ConductCell> conduct = new(static cell => cell with { Runs = 0 }, static (a, b) => a with { Runs = a.Runs + b.Runs });
    private readonly Accumulator<RepeatCell> repeats = new(static cell => cell with { Due = 0, Done = 0 }, static (a, b) => a with { Due = a.Due + b.Due, Done = a.Done + b.Done });
    private readonly Accumulator<RetestCell> retests = new(static cell => cell with { Pairs = 0 }, static (a, b) => a with { Pairs = a.Pairs + b.Pairs });
    private readonly Accumulator<SpecimenCell> specimens = new(static cell => cell with { Persons = 0 }, static (a, b) => a with { Persons = a.Persons + b.Persons });
    private readonly Accumulator<ControlCell> controls = new(static cell => cell with { Runs = 0 }, static (a, b) => a with { Runs = a.Runs + b.Runs });
    private readonly Accumulator<SettlementCell> settlements = new(static cell => cell with { Runs = 0 }, static (a, b) => a with { Runs = a.Runs + b.Runs });
    private readonly Accumulator<KitCell> kits = new(static cell => cell with { Runs = 0 }, static (a, b) => a with { Runs = a.Runs + b.Runs });
    private readonly List<NotableRun> notable = [];
    private readonly List<PersonCell> persons = [];
    private readonly List<AuditStratumCell> auditStrata = [];
    private readonly List<AuditProductCell> auditProducts = [];

    /// <summary>Adds counted runs.</summary>
    /// <param name="cell">The runs.</param>
    public void Add(ScreenCell cell) => screens.Add(cell);

    /// <summary>Adds counted runs by operator.</summary>
    /// <param name="cell">The runs.</param>
    public void Add(OperatorCell cell) => operators.Add(cell);

    /// <summary>Adds one notable run.</summary>
    /// <param name="run">The run.</param>
    public void Add(NotableRun run) => notable.Add(run);

    /// <summary>Adds sums over people that no other cell of the same coordinates holds.</summary>
    /// <param name="cell">The sums.</param>
    public void Add(PersonCell cell) => persons.Add(cell);

    /// <summary>Adds people by their number of runs.</summary>
    /// <param name="cell">The people.</param>
    public void Add(ParticipationCell cell) => participation.Add(cell);

    /// <summary>Adds cases.</summary>
    /// <param name="cell">The cases.</param>
    public void Add(CaseCell cell) => cases.Add(cell);

    /// <summary>Adds days between runs.</summary>
    /// <param name="cell">The gaps.</param>
    public void Add(GapCell cell) => gaps.Add(cell);

    /// <summary>Adds waiting times.</summary>
    /// <param name="cell">The waiting times.</param>
    public void Add(DelayCell cell) => delays.Add(cell);

    /// <summary>Adds audited runs.</summary>
    /// <param name="cell">The runs.</param>
    public void Add(AuditCell cell) => audits.Add(cell);

    /// <summary>Adds a sampling stratum of the audits.</summary>
    /// <param name="cell">The stratum.</param>
    public void Add(AuditStratumCell cell) => auditStrata.Add(cell);

    /// <summary>Adds a sum over people of the product of two totals.</summary>
    /// <param name="cell">The sum.</param>
    public void Add(AuditProductCell cell) => auditProducts.Add(cell);

    /// <summary>Adds interval cases.</summary>
    /// <param name="cell">The interval cases.</param>
    public void Add(IntervalCaseCell cell) => intervalCases.Add(cell);

    /// <summary>Adds findings of conduct.</summary>
    /// <param name="cell">The findings.</param>
    public void Add(ConductCell cell) => conduct.Add(cell);

    /// <summary>Adds repeats.</summary>
    /// <param name="cell">The repeats.</param>
    public void Add(RepeatCell cell) => repeats.Add(cell);

    /// <summary>Adds positive runs that were repeated on the same day.</summary>
    /// <param name="cell">The pairs.</param>
    public void Add(RetestCell cell) => retests.Add(cell);

    /// <summary>Adds people by their confirmatory specimens of one reason.</summary>
    /// <param name="cell">The people.</param>
    public void Add(SpecimenCell cell) => specimens.Add(cell);

    /// <summary>Adds runs of control swabs.</summary>
    /// <param name="cell">The runs.</param>
    public void Add(ControlCell cell) => controls.Add(cell);

    /// <summary>Adds changes of follow-up.</summary>
    /// <param name="cell">The runs.</param>
    public void Add(SettlementCell cell) => settlements.Add(cell);

    /// <summary>Adds counted runs of which the kit is recorded.</summary>
    /// <param name="cell">The runs.</param>
    public void Add(KitCell cell) => kits.Add(cell);

    /// <summary>The tally of everything added, with what the rest says.</summary>
    /// <param name="rest">Everything that is not added cell by cell: period, moments, ledger, headcount, completeness, diagnostics. Its own cells are added too.</param>
    /// <returns>The tally.</returns>
    /// <exception cref="ArgumentException">The cubes disagree, as in <see cref="Tally.FromCells"/>.</exception>
    public Tally Build(TallyCells rest) => Tally.FromCells(rest with
    {
        Screens = [.. rest.Screens, .. screens.Cells],
        Operators = [.. rest.Operators, .. operators.Cells],
        Notable = [.. rest.Notable, .. notable],
        Persons = [.. rest.Persons, .. persons],
        Participation = [.. rest.Participation, .. participation.Cells],
        Cases = [.. rest.Cases, .. cases.Cells],
        Gaps = [.. rest.Gaps, .. gaps.Cells],
        Delays = [.. rest.Delays, .. delays.Cells],
        Audits = [.. rest.Audits, .. audits.Cells],
        AuditStrata = [.. rest.AuditStrata, .. auditStrata],
        AuditProducts = [.. rest.AuditProducts, .. auditProducts],
        IntervalCases = [.. rest.IntervalCases, .. intervalCases.Cells],
        Conduct = [.. rest.Conduct, .. conduct.Cells],
        Repeats = [.. rest.Repeats, .. repeats.Cells],
        Retests = [.. rest.Retests, .. retests.Cells],
        Specimens = [.. rest.Specimens, .. specimens.Cells],
        Controls = [.. rest.Controls, .. controls.Cells],
        Settlements = [.. rest.Settlements, .. settlements.Cells],
        Kits = [.. rest.Kits, .. kits.Cells],
    });

    private sealed class Accumulator<T>(Func<T, T> coordinates, Func<T, T, T> add) where T : notnull
    {
        private readonly Dictionary<T, T> sums = [];

        public IEnumerable<T> Cells => sums.Values;

        public void Add(T cell)
        {
            ref var sum = ref CollectionsMarshal.GetValueRefOrAddDefault(sums, coordinates(cell), out var known);
            sum = known ? add(sum!, cell) : cell;
        }
    }
}
