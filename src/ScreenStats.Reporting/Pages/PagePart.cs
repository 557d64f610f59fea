using System.Collections.Immutable;
using ScreenStats.Reporting.Charts.Model;

namespace ScreenStats.Reporting.Pages;

/// <summary>A part of a page under a heading of its own: what is said of it, pictures, words, tables. It is left out where it has nothing to show.</summary>
/// <param name="Heading">Its heading; empty for none.</param>
/// <param name="Tables">How many of the page's tables stand in it, from the first that no earlier part has.</param>
internal sealed record PagePart(string Heading, int Tables = 0)
{
    /// <summary>Beginnings of paths in findings.json: sentences of which a figure's path, or the topic, begins so stand here, and not at the top of the page.</summary>
    public ImmutableArray<string> SpeaksOf { get; init; } = [];

    /// <summary>Ids of the page's pictures that stand in it.</summary>
    public ImmutableArray<string> Charts { get; init; } = [];

    /// <summary>What is said before its tables; empty for nothing.</summary>
    public Caption Words { get; init; } = "";

    /// <summary>A list below the words.</summary>
    public ImmutableArray<string> Items { get; init; } = [];
}
