namespace ScreenStats.Counting.Cubes;

/// <summary>What a control swab should show.</summary>
public enum ControlExpectation
{
    /// <summary>A negative control.</summary>
    Negative = 0,

    /// <summary>A positive control.</summary>
    Positive = 1,
}
