namespace ScreenStats.Counting.Cubes;

/// <summary>What one run of a screening device showed, by the lines seen on it.</summary>
public enum Outcome
{
    /// <summary>Control line, no test line.</summary>
    Negative = 0,

    /// <summary>Control line and test line.</summary>
    Positive = 1,

    /// <summary>Test line without a control line. Not a valid test, but followed up by many programs.</summary>
    Inconclusive = 2,

    /// <summary>Neither line. Not a valid test.</summary>
    Invalid = 3,
}
