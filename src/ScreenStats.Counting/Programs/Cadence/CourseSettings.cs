using System.Collections.Immutable;

namespace ScreenStats.Counting.Programs.Cadence;

/// <summary>The course of an infection as the program file states it. Days are counted from the infection.</summary>
/// <remarks>What belongs to another kind of course is null or empty.</remarks>
public sealed record CourseSettings
{
    /// <summary>How it is described.</summary>
    public required CourseKind Kind { get; init; }

    /// <summary>Windows: day from which a screen can be positive, 0 or more; never null for windows.</summary>
    public StatedRange? DetectableFrom { get; init; }

    /// <summary>Windows: day until which a screen can be positive, its value later than that of <see cref="DetectableFrom"/>; never null for windows.</summary>
    public StatedRange? DetectableTo { get; init; }

    /// <summary>Windows: day from which the infection is passed on; null where not stated, and then no infectious days are known.</summary>
    public StatedRange? InfectiousFrom { get; init; }

    /// <summary>Windows: day until which it is passed on, its value later than that of <see cref="InfectiousFrom"/>; null exactly where that is.</summary>
    public StatedRange? InfectiousTo { get; init; }

    /// <summary>By day: the name of the file, relative to the program's folder; null for other kinds.</summary>
    public string? File { get; init; }

    /// <summary>By day: what the file says, in the order of days, two or more; empty until the program is opened, and for other kinds.</summary>
    public ImmutableArray<StatedCourseDay> Days { get; init; } = [];

    /// <summary>Viral load: the logarithm (base 10) of the lowest load that a screen detects, from 0 to 12; never null for viral-load.</summary>
    public StatedRange? DetectionLimit { get; init; }

    /// <summary>Viral load: how infectiousness follows from the load above its threshold; null where not stated: the default of the model.</summary>
    public InfectiousnessKind? Infectiousness { get; init; }

    /// <summary>Where the course is from; empty where not stated.</summary>
    public string Source { get; init; } = "";

    /// <summary>Symptoms; null where not stated: nobody stays away because of them.</summary>
    public SymptomSettings? Symptoms { get; init; }
}
