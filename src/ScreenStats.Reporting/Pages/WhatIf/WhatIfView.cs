using System.Collections.Immutable;
using System.Globalization;
using ScreenStats.Evaluation.Model;
using ScreenStats.Evaluation.WhatIf;
using ScreenStats.Evaluation.WhatIf.Grids;

namespace ScreenStats.Reporting.Pages.WhatIf;

/// <summary>All that the script of the page needs for one what-if: controls, what they start at, what is said, and grids to look the figures up in.</summary>
/// <param name="Id">Lower case, words joined by hyphens.</param>
/// <param name="Controls">The controls.</param>
/// <param name="Choices">Where they can be set at once: the first is where they start.</param>
/// <param name="Says">What is said, in pieces.</param>
/// <param name="Grids">The grids. An axis is a control, or another grid.</param>
internal sealed record WhatIfView(
    string Id, ImmutableArray<WhatIfControl> Controls, ImmutableArray<WhatIfChoice> Choices, ImmutableArray<WhatIfPart> Says, ImmutableArray<Grid> Grids)
{
    private const string AtStart = ".atStart.";

    /// <summary>Makes one.</summary>
    /// <param name="id">Its id.</param>
    /// <param name="controls">Ids, labels and stops of the controls.</param>
    /// <param name="starts">Where they can start.</param>
    /// <param name="sentences">What is said where they start: figures whose path leads through it move with the controls.</param>
    /// <param name="grids">The grids.</param>
    public static WhatIfView Of(
        string id, ImmutableArray<(string Id, string Label, ImmutableArray<double> Stops)> controls, ImmutableArray<WhatIfStart> starts, IEnumerable<Sentence> sentences, ImmutableArray<Grid> grids)
    {
        var ids = controls.Select(control => control.Id).ToHashSet(StringComparer.Ordinal);
        return new WhatIfView(
            id,
            [.. controls.Select(control => new WhatIfControl(
                control.Id, control.Label, control.Id == WhatIfStops.Days ? "days" : "share", control.Stops, Known(starts.First(start => start.Measure == control.Id))))],
            [.. starts.GroupBy(start => start.Name, StringComparer.Ordinal).Select(group => new WhatIfChoice(
                group.Key, group.Where(start => ids.Contains(start.Measure)).ToImmutableSortedDictionary(start => start.Measure, start => start.At, StringComparer.Ordinal)))],
            [.. sentences.SelectMany((sentence, index) => (index > 0 ? [new WhatIfPart(" ", null, null)] : ImmutableArray<WhatIfPart>.Empty).Concat(sentence.Parts().Select(Part)))],
            grids);
    }

    private static WhatIfPart Part((string? Literal, FigureReference? Figure) part)
    {
        if (part.Figure is not { } figure) return new WhatIfPart(part.Literal!, null, null);
        var (text, at) = (Rounding.Print(figure.Value, figure.Unit), figure.Id.IndexOf(AtStart, StringComparison.Ordinal));
        return at < 0 ? new WhatIfPart(text, null, null)
            : new WhatIfPart(text, Hyphens(figure.Id[(at + AtStart.Length)..]), figure.Unit switch { Unit.Proportion => "share", Unit.Days => "days", _ => "number" });
    }

    private static string Known(WhatIfStart start)
    {
        var unit = start.Measure == WhatIfStops.Days ? Unit.Days : Unit.Proportion;
        string Print(double value) => Rounding.Print(Cell.Number(value), unit);
        var limits = start is { Lower: { } lower, Upper: { } upper } ? $" ({Print(lower).Split(' ')[0]} to {Print(upper)})" : "";
        return $"{start.Name} has {Print(start.Value)}{limits}: {start.Source}";
    }

    private static string Hyphens(string camel) => string.Concat(camel.Select(letter => char.IsUpper(letter) ? "-" + char.ToLower(letter, CultureInfo.InvariantCulture) : letter.ToString()));
}
