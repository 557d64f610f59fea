using System.Collections.Immutable;
using System.Globalization;
using System.Text.Json;
using ScreenStats.Counting.Programs.Cadence;

namespace ScreenStats.Counting.Programs.Reading.Cadence;

/// <summary>Reads ways of screening: a word, a number of days, or an object with days or weekdays.</summary>
internal sealed class OptionReader(ProgramProblems problems)
{
    private const double LeastDays = 0.25;
    private const double MostDays = 3660;
    private static readonly string Words = string.Join(", ", CadenceWords.Usual.Select(option => $"\"{option.Name}\""));
    private static readonly string Ways = $"one of {Words}, a number of days such as 3, or {{ \"weekdays\": [\"Monday\", \"Thursday\"] }}";

    /// <summary>The options, the least frequent first; null where none are stated.</summary>
    public ImmutableArray<CadenceOptionSettings>? List(ProgramSection cadence)
    {
        if (cadence.Find("options") is not { } item) return null;
        const string expected = "a list of at least one way of screening in brackets, such as [\"none\", \"weekly\", 3]";
        var options = new List<CadenceOptionSettings>();
        foreach (var one in cadence.List("options", expected))
        {
            if (Of(one, []) is not { } option) continue;
            if (options.Any(other => other.Name == option.Name)) problems.WrongValue(one, "different from the options before it, in its name too");
            else options.Add(option);
        }

        if (item.Kind == JsonValueKind.Array && item.Items.IsEmpty) problems.WrongValue(item, expected);
        if (options.Count > 50) problems.WrongValue(item, "a list of at most 50 ways of screening");
        return [.. options.OrderBy(option => option.ScreensPerDay)];
    }

    /// <summary>One option; a word may also be the name of one of the known ones.</summary>
    public CadenceOptionSettings? Of(JsonItem item, ImmutableArray<CadenceOptionSettings> known)
    {
        switch (item.Kind)
        {
            case JsonValueKind.String when known.FirstOrDefault(option => option.Name == item.Text) is { } named:
                return named;
            case JsonValueKind.String when CadenceWords.Usual.FirstOrDefault(option => option.Name == item.Text) is { } usual:
                return usual;
            case JsonValueKind.Number when known.FirstOrDefault(option => option.EveryDays == item.Number) is { } same:
                return same;
            case JsonValueKind.Number when item.Number is >= LeastDays and <= MostDays:
                return new CadenceOptionSettings { Name = Every(item.Number), EveryDays = item.Number };
            case JsonValueKind.Number:
                problems.WrongValue(item, "a number of days between screens from 0.25 to 3660; for no screening write \"none\"");
                return null;
            case JsonValueKind.Object:
                return Written(item);
            default:
                var others = known.Except(CadenceWords.Usual).Select(option => $"\"{option.Name}\"").ToList();
                problems.WrongValue(item, others.Count == 0 ? Ways : $"{Ways}, or the name of an option: {string.Join(", ", others)}");
                return null;
        }
    }

    private CadenceOptionSettings? Written(JsonItem item)
    {
        var section = new ProgramSection(item, CadenceKeys.Option, "key", problems);
        if (section.Find("everyDays") is null == section.Find("weekdays") is null)
        {
            problems.WrongValue(item, "given with \"everyDays\" or \"weekdays\", and not with both");
            return null;
        }

        var name = section.Text("name");
        if (name is not null && CadenceWords.Usual.Any(usual => usual.Name == name))
        {
            problems.WrongValue(section.Find("name")!, $"other than the words that have their own meaning: {Words}");
            return null;
        }

        if (section.Find("everyDays") is not null)
        {
            return section.Number("everyDays", LeastDays, MostDays, "a number of days between screens from 0.25 to 3660") is { } days
                ? new CadenceOptionSettings { Name = name ?? Every(days), EveryDays = days }
                : null;
        }

        var weekdays = Weekdays(section);
        return weekdays.IsEmpty ? null : new CadenceOptionSettings { Name = name ?? Named(weekdays), Weekdays = weekdays };
    }

    private ImmutableArray<DayOfWeek> Weekdays(ProgramSection section)
    {
        const string expected = "a list of weekdays in brackets, such as [\"Monday\", \"Thursday\"]";
        var item = section.Find("weekdays")!;
        var found = section.List("weekdays", expected).Select(word => section.WordOf(word, CadenceKeys.Weekdays)).ToList();
        if (item.Kind == JsonValueKind.Array && item.Items.IsEmpty) problems.WrongValue(item, expected);
        if (found.Contains(null)) return [];
        if (found.Distinct().Count() < found.Count)
        {
            problems.WrongValue(item, "a list in which no weekday stands twice");
            return [];
        }

        return [.. found.OfType<int>().Order().Select(index => (DayOfWeek)((index + 1) % 7))];
    }

    private static string Every(double days) => days == 1 ? "every day" : string.Create(CultureInfo.InvariantCulture, $"every {days} days");

    private static string Named(ImmutableArray<DayOfWeek> days) => days.Length == 1
        ? days[0].ToString()
        : string.Join(", ", days.Take(days.Length - 1)) + " and " + days[^1];
}
