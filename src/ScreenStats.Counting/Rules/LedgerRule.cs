using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Ledger;

namespace ScreenStats.Counting.Rules;

/// <summary>Where a row that is neither set aside nor a duplicate stands in the ledger.</summary>
public static class LedgerRule
{
    /// <summary>The first entry that applies: control run, kept out as symptomatic, kept out as exposed, counted.</summary>
    /// <param name="control">What a control swab should show; null for a run on a person.</param>
    /// <param name="symptomatic">True only where the export says yes. A blank is not recorded, never no, and is not kept out.</param>
    /// <param name="exposed">True only where the export says yes.</param>
    /// <returns>The entry.</returns>
    public static LedgerEntry Entry(ControlExpectation? control, bool symptomatic, bool exposed) =>
        control is not null ? LedgerEntry.ControlRun
        : symptomatic ? LedgerEntry.KeptOutSymptomatic
        : exposed ? LedgerEntry.KeptOutExposed
        : LedgerEntry.Counted;
}
