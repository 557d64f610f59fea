using System.Collections.Immutable;

namespace ScreenStats.Counting.Programs.Surroundings;

/// <summary>A rate from outside the program, to be shown beside its own.</summary>
public sealed record CommunitySettings
{
    /// <summary>What the values are rates of.</summary>
    public CommunityMeasure Measure { get; init; }

    /// <summary>Where they come from.</summary>
    public string Source { get; init; } = "";

    /// <summary>The values in order of their first days, at least one.</summary>
    public ImmutableArray<CommunityValue> Values { get; init; } = [];

    /// <summary>Last day of the last value, where that is stated.</summary>
    public DateOnly? Until { get; init; }

    /// <summary>Last day on which the last value holds; null: without end.</summary>
    /// <remarks>
    /// As stated; else as long as the value before it held, so that an old figure is not carried on for months;
    /// one value alone has no end.
    /// </remarks>
    public DateOnly? LastDay =>
        Until is not null || Values.Length < 2 ? Until : After(Values[^1].From, Values[^1].From.DayNumber - Values[^2].From.DayNumber - 1);

    /// <summary>The value that holds on a day.</summary>
    /// <param name="day">The day.</param>
    /// <returns>The last value that began by then; null before the first and after the last day of the last.</returns>
    public CommunityValue? On(DateOnly day)
    {
        if (LastDay is { } end && day > end) return null;
        for (var index = Values.Length - 1; index >= 0; index--)
        {
            if (Values[index].From <= day) return Values[index];
        }

        return null;
    }

    private static DateOnly After(DateOnly day, int days) => DateOnly.FromDayNumber(Math.Min(day.DayNumber + days, DateOnly.MaxValue.DayNumber));
}
