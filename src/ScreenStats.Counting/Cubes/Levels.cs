namespace ScreenStats.Counting.Cubes;

/// <summary>Level names shared by every cube.</summary>
public static class Levels
{
    /// <summary>The level of rows in which a lot, kit, operator or stratum is not recorded.</summary>
    public const string None = "(none)";

    /// <summary>The order of levels in every table: ordinal, so that it is the same on every machine.</summary>
    public static StringComparer Order => StringComparer.Ordinal;
}
