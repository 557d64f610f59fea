namespace ScreenStats.Counting.Ledger;

/// <summary>What became of a row of an export. The first that applies, in this order.</summary>
public enum LedgerEntry
{
    /// <summary>A required field is missing or cannot be read, or the row conflicts with an earlier one of the same identifier.</summary>
    SetAside = 0,

    /// <summary>The same values, as understood, as an earlier row.</summary>
    Duplicate = 1,

    /// <summary>A run of a control swab.</summary>
    ControlRun = 2,

    /// <summary>A run on a person with symptoms.</summary>
    KeptOutSymptomatic = 3,

    /// <summary>A run on a contact of a case.</summary>
    KeptOutExposed = 4,

    /// <summary>Counted.</summary>
    Counted = 5,
}
