namespace ScreenStats.Statistics.Cadence.Courses.ViralLoads;

/// <summary>What the longest time of growth limits.</summary>
public enum GrowthLimit
{
    /// <summary>The whole time, shortest and drawn part together.</summary>
    Whole,

    /// <summary>The drawn part alone.</summary>
    DrawnPart,
}
