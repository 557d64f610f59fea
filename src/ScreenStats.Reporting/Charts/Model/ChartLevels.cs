namespace ScreenStats.Reporting.Charts.Model;

/// <summary>What the levels of a picture are, where a reader can have one marked everywhere.</summary>
internal enum ChartLevels
{
    /// <summary>None that can be marked.</summary>
    Other = 0,

    /// <summary>Sites.</summary>
    Site = 1,

    /// <summary>Lots.</summary>
    Lot = 2,
}
