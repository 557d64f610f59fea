namespace ScreenStats.Reporting.Charts.Cadence;

/// <summary>What is said of a way of screening beside its name.</summary>
[Flags]
internal enum OptionStanding
{
    /// <summary>One of those to choose from.</summary>
    None = 0,

    /// <summary>What the program set out to do.</summary>
    Planned = 1,

    /// <summary>The one that the rule chooses.</summary>
    Chosen = 2,

    /// <summary>What was done in the data.</summary>
    Done = 4,
}
