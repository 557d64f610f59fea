using System.Globalization;

namespace ScreenStats.Synthesis.Simulation;

/// <summary>Dates as text, the same under every culture.</summary>
internal static class Dates
{
    public static string Text(DateOnly day) => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    /// <summary>The ISO week of a day, as 2026-W05.</summary>
    public static string Week(DateOnly day)
    {
        var moment = day.ToDateTime(TimeOnly.MinValue);
        return string.Create(CultureInfo.InvariantCulture, $"{ISOWeek.GetYear(moment):0000}-W{ISOWeek.GetWeekOfYear(moment):00}");
    }
}
