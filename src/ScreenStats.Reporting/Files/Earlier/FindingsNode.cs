using System.Globalization;
using System.Text.Json;

namespace ScreenStats.Reporting.Files.Earlier;

/// <summary>A member of findings.json, asked by name. A member of another kind than is asked for counts as not there.</summary>
/// <param name="element">The element.</param>
internal sealed class FindingsNode(JsonElement element)
{
    /// <summary>More than any program counts.</summary>
    private const long MostCounted = 1_000_000_000_000;

    /// <summary>A member that is an object; null where there is none, or null stands there.</summary>
    public FindingsNode? this[string name] => Member(name) is { ValueKind: JsonValueKind.Object } value ? new FindingsNode(value) : null;

    /// <summary>A member that must be an object.</summary>
    /// <exception cref="MissingException">There is none.</exception>
    public FindingsNode Required(string name) => this[name] ?? throw new MissingException(name);

    /// <summary>The objects in a member that must be a list.</summary>
    /// <exception cref="MissingException">There is none, or something else is in it.</exception>
    public IEnumerable<FindingsNode> Items(string name)
    {
        if (Member(name) is not { ValueKind: JsonValueKind.Array } list) throw new MissingException(name);
        return list.EnumerateArray().Select(item => item.ValueKind == JsonValueKind.Object ? new FindingsNode(item) : throw new MissingException(name));
    }

    public string? Text(string name) => Member(name) is { ValueKind: JsonValueKind.String } value ? value.GetString() : null;

    public double? Number(string name) => Member(name) is { ValueKind: JsonValueKind.Number } value && value.TryGetDouble(out var number) && double.IsFinite(number) ? number : null;

    public long? Whole(string name) => Member(name) is { ValueKind: JsonValueKind.Number } value && value.TryGetInt64(out var number) ? number : null;

    /// <summary>A count: from 0 up to what no program counts, so that sums of many stay within bounds.</summary>
    /// <exception cref="MissingException">There is a whole number that no count can be.</exception>
    public long? Count(string name) => Whole(name) is not { } count ? null : count is >= 0 and <= MostCounted ? count : throw new MissingException(name);

    /// <summary>A number from 0 to 1.</summary>
    /// <exception cref="MissingException">There is another number.</exception>
    public double? Share(string name) => Number(name) is not { } share ? null : share is >= 0 and <= 1 ? share : throw new MissingException(name);

    public bool True(string name) => Member(name) is { ValueKind: JsonValueKind.True };

    public DateOnly? Day(string name) => Text(name) is { } text && DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var day) ? day : null;

    private JsonElement? Member(string name) => element.ValueKind == JsonValueKind.Object && element.TryGetProperty(name, out var value) ? value : null;

    /// <summary>Something that the format has is not there.</summary>
    /// <param name="member">Its name.</param>
    internal sealed class MissingException(string member) : Exception($"There is no {member}.")
    {
        /// <summary>Its name.</summary>
        public string Member { get; } = member;
    }
}
