namespace ScreenStats.Counting.Diagnostics;

/// <summary>How much a diagnostic matters.</summary>
public enum Severity
{
    /// <summary>Worth knowing; nothing was lost.</summary>
    Note = 0,

    /// <summary>Something was set aside, left open or done against the instructions.</summary>
    Warning = 1,

    /// <summary>The data cannot be used until this is mended.</summary>
    Error = 2,
}
