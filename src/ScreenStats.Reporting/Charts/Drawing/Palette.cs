using ScreenStats.Reporting.Charts.Model;

namespace ScreenStats.Reporting.Charts.Drawing;

/// <summary>
/// Our colours: told apart by lightness as well as by hue, so that they hold for red-green and blue-yellow colour blindness and in
/// print without colour. Meaning never rests on them alone: shape, fill and a direct label say the same.
/// </summary>
internal static class Palette
{
    /// <summary>The paper behind every picture; also in the dark, so that a picture reads the same everywhere.</summary>
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
        Tone.Second => "#5f8f2f",
        Tone.Open => "#e3c65f",
        Tone.Waiting => "#a9c3d6",
        Tone.Unknown => "#d3d1ca",
        Tone.Paper => Paper,
        _ => throw new ArgumentOutOfRangeException(nameof(tone), tone, "A tone of the palette."),
    };

    /// <summary>The same tone for a figure that rests on few counts.</summary>
    public static string Faded(Tone tone) => tone switch
    {
        Tone.Main => "#94a9bb",
        Tone.Alert => "#d9a583",
        _ => Of(tone),
    };
}
