namespace ScreenStats.Reporting.Charts.Model;

/// <summary>What a mark means; the palette decides its colour.</summary>
internal enum Tone
{
    /// <summary>Text, axes.</summary>
    Ink = 0,

    /// <summary>Notes, reference lines.</summary>
    Quiet = 1,

    /// <summary>The figures themselves.</summary>
    Main = 2,

    /// <summary>What needs looking into.</summary>
    Alert = 3,

    /// <summary>A second series.</summary>
    Second = 4,

    /// <summary>A part not decided.</summary>
    Open = 5,

    /// <summary>A part still waiting.</summary>
    Waiting = 6,

    /// <summary>A part not known.</summary>
    Unknown = 7,

    /// <summary>The paper: words on a dark bar.</summary>
    Paper = 8,
}
