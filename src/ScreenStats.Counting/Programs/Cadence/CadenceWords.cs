using System.Collections.Immutable;

namespace ScreenStats.Counting.Programs.Cadence;

/// <summary>The words for usual ways of screening.</summary>
public static class CadenceWords
{
    /// <summary>Days between screens at "monthly": a twelfth of 365.</summary>
    public const double MonthDays = 365.0 / 12;

    /// <summary>The usual options, the least frequent first: none, monthly, fortnightly, weekly, twice-weekly, every-second-day, daily.</summary>
    public static ImmutableArray<CadenceOptionSettings> Usual { get; } =
    [
        new() { Name = "none" },
        new() { Name = "monthly", EveryDays = MonthDays },
        new() { Name = "fortnightly", EveryDays = 14 },
        new() { Name = "weekly", EveryDays = 7 },
        new() { Name = "twice-weekly", EveryDays = 3.5 },
        new() { Name = "every-second-day", EveryDays = 2 },
        new() { Name = "daily", EveryDays = 1 },
    ];
}
