namespace ScreenStats.Statistics.Cadence.Correlation;

/// <summary>What is taken of people who leave a table of serial tests before the last test.</summary>
public enum LeaverAssumption
{
    /// <summary>They are like those who stay: whether somebody leaves has nothing to do with the tests before.</summary>
    AsStayers,

    /// <summary>All had been found, and stopped for that: the bound at which later tests find most.</summary>
    AllFound,

    /// <summary>
    /// People already positive stay with another chance than the others, the same all over the table, estimated with the rest: from rows and groups
    /// with many positives people leave more, or less.
    /// </summary>
    Estimated,
}
