namespace ScreenStats.Counting.Cubes;

/// <summary>The part of the program within which a person's runs are summed.</summary>
public enum PersonScope
{
    /// <summary>The whole program; the level is empty.</summary>
    Program = 0,

    /// <summary>One site.</summary>
    Site = 1,

    /// <summary>One lot.</summary>
    Lot = 2,

    /// <summary>The whole program in one reporting period; the level is empty.</summary>
    Period = 3,

    /// <summary>The whole program in one ISO week (the period starts on its Monday); the level is empty.</summary>
    Week = 4,

    /// <summary>One site in one ISO week.</summary>
    SiteWeek = 5,
}
