using ScreenStats.Reporting.Charts.Model;

namespace ScreenStats.Reporting.Charts.Comparisons;

/// <summary>Where a level lies between the limits for its size. Told by shape and word; neither side is good or bad.</summary>
internal enum LevelStanding
{
    /// <summary>Within.</summary>
    Within = 0,

    /// <summary>Above.</summary>
    Above = 1,

    /// <summary>Below.</summary>
    Below = 2,
}

/// <summary>How standings are drawn.</summary>
internal static class LevelStandings
{
    /// <summary>The shape of a standing.</summary>
    public static DotShape Shape(this LevelStanding standing) => standing switch
    {
        LevelStanding.Above => DotShape.TriangleUp,
        LevelStanding.Below => DotShape.TriangleDown,
        _ => DotShape.Filled,
    };

    /// <summary>The word of a standing.</summary>
    public static string Word(this LevelStanding standing) => standing switch
    {
        LevelStanding.Above => "above",
        LevelStanding.Below => "below",
        _ => "within",
    };

    /// <summary>What lies outside the outer limits is as dark as words are: dark, not coloured, so that no colour judges it.</summary>
    public static Tone Tone(bool far) => far ? Model.Tone.Ink : Model.Tone.Main;
}
