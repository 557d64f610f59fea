using System.Collections.Immutable;
using ScreenStats.Counting.Cubes;

namespace ScreenStats.Counting.Replay;

/// <summary>
/// What was known of a program at the end of a day: the cubes of a <see cref="Tally"/> that can be replayed, each in its canonical order.
/// </summary>
/// <remarks>
/// <para>
/// Equal to the cubes of a reading of the exports as they stood then: screening and control rows of no later day, confirmatory rows
/// reported by then, with that day stated as the one up to which the data are complete. A test holds that equality.
/// </para>
/// <para>
/// Not replayed, and so not here: what is summed over people (persons, participation, gaps, cases, interval cases), audits, retests, delays,
/// ledger, completeness, diagnostics. An audited negative run is a negative run here. A row that was set aside because its
/// <c>screen_id</c> stood on an earlier line with other values is out on every day, whatever the days of the two.
/// </para>
/// </remarks>
public sealed record TallyAsOf
{
    /// <summary>The local day at whose end this was known.</summary>
    public required DateOnly Day { get; init; }

    /// <summary>True where a confirmatory export exists.</summary>
    public required bool HasConfirmatory { get; init; }

    /// <summary>Counted runs of no later day, with their follow-up as then known; negative runs have none.</summary>
    public required ImmutableArray<ScreenCell> Screens { get; init; }

    /// <summary>The same by operator.</summary>
    public required ImmutableArray<OperatorCell> Operators { get; init; }

    /// <summary>Positive, inconclusive, invalid and control runs of no later day, with their follow-up as then known.</summary>
    public required ImmutableArray<NotableRun> Notable { get; init; }

    /// <summary>Every change of follow-up known by then, in the order in which it became known.</summary>
    public required ImmutableArray<SettlementCell> Settlements { get; init; }

    /// <summary>Runs of control swabs of no later day.</summary>
    public required ImmutableArray<ControlCell> Controls { get; init; }

    /// <summary>Counted runs of which the kit is recorded, of no later day.</summary>
    public required ImmutableArray<KitCell> Kits { get; init; }

    /// <summary>Findings of conduct known by then.</summary>
    public required ImmutableArray<ConductCell> Conduct { get; init; }

    /// <summary>Repeats due and done by then.</summary>
    public required ImmutableArray<RepeatCell> Repeats { get; init; }

    /// <summary>Eligible people of the weeks that had begun.</summary>
    public required ImmutableArray<HeadcountCell> Headcount { get; init; }
}
