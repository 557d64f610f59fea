using System.Collections.Immutable;
using System.Globalization;
using System.Text.Json;

namespace ScreenStats.Counting.Programs.Reading;

/// <summary>One object of a program file: typed access to its keys, reporting what does not fit and going on.</summary>
internal sealed class ProgramSection
{
    private readonly Dictionary<string, JsonItem> members = new(StringComparer.Ordinal);
    private readonly ProgramProblems problems;

    /// <summary>Opens an object; a null or absent one is empty; unknown and repeated keys are reported.</summary>
    public ProgramSection(JsonItem? item, IReadOnlyList<string> known, string kindOfKey, ProgramProblems problems)
    {
        this.problems = problems;
        Item = item;
        if (item is null) return;
        if (item.Kind != JsonValueKind.Object)
        {
            problems.WrongValue(item, "an object in braces: { }");
            return;
        }

        foreach (var (name, value) in item.Members)
        {
            if (!known.Contains(name, StringComparer.Ordinal))
            {
                problems.Add(ProgramFile.UnknownKeyCode, value.Line,
                    $"{value.Path}: unknown {kindOfKey}; the nearest known one is \"{NearestName.Of(name, known)}\".");
            }
            else if (!members.TryAdd(name, value))
            {
                problems.Add(ProgramFile.RepeatedKeyCode, value.Line, $"{value.Path} is given twice; keep one.");
            }
        }
    }

    public JsonItem? Item { get; }

    public IEnumerable<KeyValuePair<string, JsonItem>> Known => members.Where(member => member.Value.Kind != JsonValueKind.Null);

    /// <summary>The value of a key; null where it is absent or written as null.</summary>
    public JsonItem? Find(string name) =>
        members.TryGetValue(name, out var item) && item.Kind != JsonValueKind.Null ? item : null;

    public string? Text(string name) => Find(name) is { } item ? TextOf(item) : null;

    public string? TextOf(JsonItem item)
    {
        if (item.Kind == JsonValueKind.String && item.Text.AsSpan().Trim().Length > 0) return item.Text;
        problems.WrongValue(item, "a text in quotes, not empty");
        return null;
    }

    public double? Number(string name, double least, double most, string expected)
    {
        if (Find(name) is not { } item) return null;
        if (item.Kind == JsonValueKind.Number && item.Number >= least && item.Number <= most) return item.Number;
        problems.WrongValue(item, expected);
        return null;
    }

    public int? Whole(string name, int least, int most, string expected)
    {
        if (Find(name) is not { } item) return null;
        if (WholeOf(item, least, most) is { } whole) return whole;
        problems.WrongValue(item, expected);
        return null;
    }

    public static int? WholeOf(JsonItem item, int least, int most) =>
        item.Kind == JsonValueKind.Number && item.Number >= least && item.Number <= most && item.Number == Math.Floor(item.Number)
            ? (int)item.Number
            : null;

    public bool? YesNo(string name)
    {
        if (Find(name) is not { } item) return null;
        if (item.Kind is JsonValueKind.True or JsonValueKind.False) return item.Kind == JsonValueKind.True;
        problems.WrongValue(item, "true or false");
        return null;
    }

    public int? Word(string name, IReadOnlyList<string> words) => Find(name) is { } item ? WordOf(item, words) : null;

    /// <summary>The position of a word among the allowed ones.</summary>
    public int? WordOf(JsonItem item, IReadOnlyList<string> words)
    {
        for (var index = 0; index < words.Count; index++)
        {
            if (item.Kind == JsonValueKind.String && string.Equals(item.Text, words[index], StringComparison.Ordinal)) return index;
        }

        problems.WrongValue(item, "one of " + string.Join(", ", words.Select(word => $"\"{word}\"")));
        return null;
    }

    public ImmutableArray<JsonItem> List(string name, string expected)
    {
        if (Find(name) is not { } item) return [];
        if (item.Kind == JsonValueKind.Array) return item.Items;
        problems.WrongValue(item, expected);
        return [];
    }

    public ImmutableArray<string> Texts(string name, string expected) =>
        [.. List(name, expected).Select(TextOf).OfType<string>()];

    /// <summary>A share in [0, 1]; null, and a problem, where it is none.</summary>
    public double? Share(string name)
    {
        if (Find(name) is not { } item) return null;
        if (item.Kind == JsonValueKind.Number && item.Number is >= 0 and <= 1) return item.Number;
        problems.WrongValue(item, item.Kind == JsonValueKind.Number && item.Number is > 1 and <= 100
            ? string.Create(CultureInfo.InvariantCulture, $"a fraction from 0 to 1: for {item.Number} percent write {item.Number / 100}")
            : "a fraction from 0 to 1, such as 0.93");
        return null;
    }
}
