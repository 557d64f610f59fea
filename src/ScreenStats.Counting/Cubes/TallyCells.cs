using System.Collections.Immutable;
using ScreenStats.Counting.Diagnostics;
using ScreenStats.Counting.Ledger;

namespace ScreenStats.Counting.Cubes;

/// <summary>The cells of every cube, in any order, as a source delivers them to <see cref="Tally.FromCells"/>.</summary>
public sealed record TallyCells
{
    /// <summary>Length of the reporting period by which <see cref="Persons"/> was summed.</summary>
    public ReportPeriod Period { get; init; } = ReportPeriod.Week;

    /// <summary>The moment up to which the data are complete, local; null where nothing was counted.</summary>
    public DateTime? DataAsOf { get; init; }

    /// <summary>Hours from collection to report that were allowed before a missing specimen counts as unverified.</summary>
    public double ReportingLagHours { get; init; }

    /// <summary>True where the reporting lag is the data's own 95th percentile, false where it is the program file's.</summary>
    public bool ReportingLagFromData { get; init; }

    /// <summary>True where a confirmatory export exists.</summary>
    public bool HasConfirmatory { get; init; }

    /// <summary>Counted runs.</summary>
    public ImmutableArray<ScreenCell> Screens { get; init; } = [];

    /// <summary>Counted runs by operator.</summary>
    public ImmutableArray<OperatorCell> Operators { get; init; } = [];

    /// <summary>Single runs worth a look.</summary>
    public ImmutableArray<NotableRun> Notable { get; init; } = [];

    /// <summary>When the follow-up of each of them became known: what <see cref="Tally.AsOf"/> needs. None where the source does not tell.</summary>
    public ImmutableArray<SettlementCell> Settlements { get; init; } = [];

    /// <summary>Sums over people.</summary>
    public ImmutableArray<PersonCell> Persons { get; init; } = [];

    /// <summary>Runs per person.</summary>
    public ImmutableArray<ParticipationCell> Participation { get; init; } = [];

    /// <summary>Cases.</summary>
    public ImmutableArray<CaseCell> Cases { get; init; } = [];

    /// <summary>Days between consecutive runs of a person.</summary>
    public ImmutableArray<GapCell> Gaps { get; init; } = [];

    /// <summary>Waiting times.</summary>
    public ImmutableArray<DelayCell> Delays { get; init; } = [];

    /// <summary>Verified negative runs.</summary>
    public ImmutableArray<AuditCell> Audits { get; init; } = [];

    /// <summary>Sampling strata of the audits; none where no negative run was audited.</summary>
    public ImmutableArray<AuditStratumCell> AuditStrata { get; init; } = [];

    /// <summary>Sums over people of products of their totals; none where no negative run was audited.</summary>
    public ImmutableArray<AuditProductCell> AuditProducts { get; init; } = [];

    /// <summary>Interval cases.</summary>
    public ImmutableArray<IntervalCaseCell> IntervalCases { get; init; } = [];

    /// <summary>Findings of conduct.</summary>
    public ImmutableArray<ConductCell> Conduct { get; init; } = [];

    /// <summary>Repeats due and done.</summary>
    public ImmutableArray<RepeatCell> Repeats { get; init; } = [];

    /// <summary>Positive runs that were repeated on the same day.</summary>
    public ImmutableArray<RetestCell> Retests { get; init; } = [];

    /// <summary>Confirmatory specimens by why they were taken.</summary>
    public ImmutableArray<SpecimenCell> Specimens { get; init; } = [];

    /// <summary>Specimens on which the follow-up or audit of a run rests, each once; null where the source does not tell.</summary>
    public long? SettlingSpecimens { get; init; }

    /// <summary>Runs of control swabs.</summary>
    public ImmutableArray<ControlCell> Controls { get; init; } = [];

    /// <summary>Counted runs of which the kit is recorded; none where the export records no kits, or more than a program can have (single devices).</summary>
    public ImmutableArray<KitCell> Kits { get; init; } = [];

    /// <summary>Eligible people.</summary>
    public ImmutableArray<HeadcountCell> Headcount { get; init; } = [];

    /// <summary>What the export of sites says, one cell a site; none where there is no such export.</summary>
    public ImmutableArray<SiteCell> Sites { get; init; } = [];

    /// <summary>How much of each column is recorded.</summary>
    public ImmutableArray<CompletenessCell> Completeness { get; init; } = [];

    /// <summary>The ledger of every export.</summary>
    public ImmutableArray<LedgerCell> Ledger { get; init; } = [];

    /// <summary>What was found in the data.</summary>
    public ImmutableArray<Diagnostic> Diagnostics { get; init; } = [];
}
