using System.Collections.Immutable;

namespace ScreenStats.Synthesis.Planning;

/// <summary>What is wrong with the exports themselves. Shares are of rows, in [0, 1].</summary>
public sealed record SynthesisDirt
{
    /// <summary>Rows written twice.</summary>
    public double Duplicates { get; init; }

    /// <summary>Rows followed by another with the same identifier and another result.</summary>
    public double Conflicts { get; init; }

    /// <summary>Rows whose date of collection cannot be read.</summary>
    public double UnreadableDates { get; init; }

    /// <summary>Rows whose result is a word nobody knows.</summary>
    public double UnknownWords { get; init; }

    /// <summary>Rows without a result.</summary>
    public double BlankResults { get; init; }

    /// <summary>Rows without a lot, at every site.</summary>
    public double MissingLots { get; init; }

    /// <summary>Rows without a kit.</summary>
    public double MissingKits { get; init; }

    /// <summary>Rows without an operator.</summary>
    public double MissingOperators { get; init; }

    /// <summary>Rows in which it is not recorded whether the person had symptoms.</summary>
    public double BlankSymptoms { get; init; }

    /// <summary>Rows whose time of reading cannot be read.</summary>
    public double UnreadableReadTimes { get; init; }

    /// <summary>Rows whose result is in capitals.</summary>
    public double Capitals { get; init; }

    /// <summary>Runs read before or after the device's window.</summary>
    public double ReadOutsideWindow { get; init; }

    /// <summary>Kits from which one or two runs more are recorded than they hold, as a share of kits.</summary>
    public double OverusedKits { get; init; }

    /// <summary>Exports whose lines end in carriage return and line feed: screening, confirmatory, controls, headcount, sites.</summary>
    public ImmutableArray<string> CarriageReturns { get; init; } = [];

    /// <summary>Exports that start with a byte order mark.</summary>
    public ImmutableArray<string> ByteOrderMarks { get; init; } = [];
}
