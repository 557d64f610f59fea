using System.Collections.Immutable;

namespace ScreenStats.Reporting.Charts.Model;

/// <summary>A picture before it is drawn: everything it says, in numbers and words, so that it can be tested without a pixel.</summary>
/// <param name="Id">Base name of its files: lower case, words joined by hyphens.</param>
/// <param name="Title">What is shown.</param>
/// <param name="Caption">What to see in it, and how to read the marks.</param>
/// <param name="Description">The same for someone who cannot see it: what is drawn, and its main figures.</param>
/// <param name="TableId">The table that holds its figures.</param>
/// <param name="Horizontal">Horizontal axis.</param>
/// <param name="Vertical">Vertical axis.</param>
/// <param name="Marks">What is drawn, from back to front.</param>
/// <param name="Height">Height in pixels; the width is the same for all.</param>
internal sealed record Chart(
    string Id, string Title, Caption Caption, string Description, string TableId, Axis Horizontal, Axis Vertical, ImmutableArray<Mark> Marks, int Height)
{
    /// <summary>Whether it has no axes and no margins: places are pixels, heights counted from the top downwards, below 0.</summary>
    public bool Bare { get; init; }

    /// <summary>What the levels are that its words name.</summary>
    public ChartLevels Levels { get; init; }

    /// <summary>The scale of what it measures; null where no other picture measures the same.</summary>
    public ChartScale? Scale { get; init; }

    /// <summary>Width of every picture in pixels.</summary>
    public const int Width = 540;

    /// <summary>Size of words in pixels.</summary>
    public const float TextSize = 15;
}
