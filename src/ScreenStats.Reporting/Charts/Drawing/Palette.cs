using ScreenStats.Reporting.Charts.Model;

namespace ScreenStats.Reporting.Charts.Drawing;

/// <summary>
/// Our colours: blue for what is measured, burnt orange for what needs looking into, which every kind of colour blindness tells apart; ochre,
/// steel and grey for what is not decided. Each stands out from the paper by at least 3 to 1, and words by 4.5 to 1, also words of ink on the
/// three undecided ones. Meaning never rests on them alone: shape, fill and a direct label say the same. The style sheet of the page has for
/// each its colour in the dark (a test holds that none is forgotten).
/// </summary>
internal static class Palette
{
    /// <summary>The paper behind every picture; in the dark a page shows it dark.</summary>
    public const string Paper = "#fcfbf8";

    /// <summary>Lines behind the figures.</summary>
    public const string Grid = "#e4e1d9";

    /// <summary>The colour of a tone.</summary>
    public static string Of(Tone tone) => tone switch
    {
        Tone.Ink => "#23282e",
        Tone.Quiet => "#666c73",
        Tone.Main => "#1d4f78",
        Tone.Alert => "#b8500f",
        Tone.Second => "#537e29",
        Tone.Open => "#b4882a",
        Tone.Waiting => "#6f93b1",
        Tone.Unknown => "#928f89",
        Tone.Paper => Paper,
        _ => throw new ArgumentOutOfRangeException(nameof(tone), tone, "A tone of the palette."),
    };

    /// <summary>The same tone for a figure that rests on few counts.</summary>
    public static string Faded(Tone tone) => tone switch
    {
        Tone.Main => "#7a92a7",
        Tone.Alert => "#c57f4d",
        _ => Of(tone),
    };
}
