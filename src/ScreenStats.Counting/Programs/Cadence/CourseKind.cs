namespace ScreenStats.Counting.Programs.Cadence;

/// <summary>How the course of an infection is described.</summary>
public enum CourseKind
{
    /// <summary>Two windows: when it can be detected and when it is passed on, the same for everybody.</summary>
    Windows,

    /// <summary>Detection and infectiousness by day since infection, from a file.</summary>
    ByDay,

    /// <summary>Individual courses of the viral load with a limit of detection.</summary>
    ViralLoad,
}
