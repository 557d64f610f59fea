using System.Collections.Immutable;

namespace ScreenStats.Counting.Programs.Cadence;

/// <summary>One way of screening to be compared: none, every so many days, or on fixed weekdays.</summary>
public sealed record CadenceOptionSettings
{
    /// <summary>What it is called, unique among the options.</summary>
    public required string Name { get; init; }

    /// <summary>Days from one screen to the next, from 0.25 to 3660; null on fixed weekdays and without screening.</summary>
    public double? EveryDays { get; init; }

    /// <summary>The weekdays of screening, Monday first; empty where it does not go by weekdays.</summary>
    public ImmutableArray<DayOfWeek> Weekdays { get; init; } = [];

    /// <summary>True where nobody is screened.</summary>
    public bool IsNone => EveryDays is null && Weekdays.IsEmpty;

    /// <summary>Screens of one person per day where everybody takes part: 0 without screening.</summary>
    public double ScreensPerDay => EveryDays is { } days ? 1 / days : Weekdays.Length / 7.0;
}
