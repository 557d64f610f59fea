using System.Collections.Immutable;
using System.Text.Json;

namespace ScreenStats.Counting.Programs.Reading;

/// <summary>One value of a JSON text with the place where it stands.</summary>
/// <param name="Kind">Kind of value.</param>
/// <param name="Path">Path from the root, such as <c>screens[0].name</c>; empty for the root.</param>
/// <param name="Line">Line on which the value, or the key before it, stands; from 1.</param>
internal sealed record JsonItem(JsonValueKind Kind, string Path, long Line)
{
    /// <summary>The text of a string; empty otherwise.</summary>
    public string Text { get; init; } = "";

    /// <summary>The value of a number; infinite where a double cannot hold it.</summary>
    public double Number { get; init; }

    /// <summary>Keys and values of an object, in the order written.</summary>
    public ImmutableArray<KeyValuePair<string, JsonItem>> Members { get; init; } = [];

    /// <summary>Items of a list.</summary>
    public ImmutableArray<JsonItem> Items { get; init; } = [];
}
