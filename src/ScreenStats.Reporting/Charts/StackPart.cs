using ScreenStats.Reporting.Charts.Model;

namespace ScreenStats.Reporting.Charts;

/// <summary>A part of a stacked bar.</summary>
/// <param name="Name">What it is.</param>
/// <param name="Count">How many.</param>
/// <param name="Tone">Its colour.</param>
internal sealed record StackPart(string Name, long Count, Tone Tone);
