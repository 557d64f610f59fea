using System.Globalization;
using System.Text.Json;

namespace ScreenStats.Counting.Programs.Reading;

/// <summary>Reads a calendar day written in ISO 8601.</summary>
internal static class DayReader
{
    /// <summary>The day of a key; null where the key is absent, and, with a problem, where it is no date.</summary>
    public static DateOnly? Read(ProgramSection section, string name, string example, ProgramProblems problems)
    {
        if (section.Find(name) is not { } item) return null;
        if (item.Kind == JsonValueKind.String && DateOnly.TryParseExact(item.Text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var day)) return day;
        problems.WrongValue(item, $"an ISO 8601 date in quotes, such as \"{example}\"");
        return null;
    }
}
