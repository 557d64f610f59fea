namespace ScreenStats.Reporting.Charts.Worth;

/// <summary>What is said of an option on the plane of cost and effect.</summary>
[Flags]
internal enum PlaneStanding
{
    /// <summary>Neither.</summary>
    None = 0,

    /// <summary>For some value of an effect nothing does better.</summary>
    OnFrontier = 1,

    /// <summary>The one that the verdict is of.</summary>
    Judged = 2,

    /// <summary>The highest net benefit at the stated value.</summary>
    Best = 4,
}
