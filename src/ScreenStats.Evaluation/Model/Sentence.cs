using System.Collections.Immutable;
using System.Text;

namespace ScreenStats.Evaluation.Model;

/// <summary>
/// A sentence over figures: a template in which <c>{0}</c>, <c>{1}</c>, … stand for figure references, so that no number
/// is ever typed into a text and every printed number can be traced to findings.json.
/// </summary>
public sealed record Sentence
{
    /// <summary>Creates a sentence.</summary>
    /// <param name="template">Text with one placeholder per figure, each used at least once.</param>
    /// <param name="figures">The figures.</param>
    /// <exception cref="ArgumentException">A placeholder has no figure, or a figure no placeholder.</exception>
    public Sentence(string template, params ImmutableArray<FigureReference> figures)
    {
        Template = template;
        Figures = figures;
        var used = Parts().Where(part => part.Figure is not null).Select(part => part.Figure!).Distinct().Count();
        if (used != figures.Distinct().Count()) throw new ArgumentException($"A figure of the sentence \"{template}\" is never spoken of.", nameof(figures));
    }

    /// <summary>Text with placeholders.</summary>
    public string Template { get; }

    /// <summary>The figures, in the order of their placeholders' numbers.</summary>
    public ImmutableArray<FigureReference> Figures { get; }

    /// <summary>Whether it turns to something else, so that a page begins a paragraph with it.</summary>
    public bool BeginsParagraph { get; init; }

    /// <summary>What it speaks of, as a path in findings.json, where no figure of it says so: a page places it by that. Empty for none.</summary>
    public string Topic { get; init; } = "";

    /// <summary>The sentence as it is read, figures printed by the one rounding rule.</summary>
    public string Text
    {
        get
        {
            var text = new StringBuilder();
            foreach (var (literal, figure) in Parts()) text.Append(figure is null ? literal : Rounding.Print(figure.Value, figure.Unit));
            return text.ToString();
        }
    }

    /// <summary>The sentence in pieces: literal texts, and figures in between.</summary>
    /// <returns>Pieces in order; exactly one of the two members of each is set.</returns>
    /// <exception cref="ArgumentException">The template is malformed.</exception>
    public IEnumerable<(string? Literal, FigureReference? Figure)> Parts()
    {
        var position = 0;
        while (position < Template.Length)
        {
            var open = Template.IndexOf('{', position);
            if (open < 0)
            {
                yield return (Template[position..], null);
                yield break;
            }

            var close = Template.IndexOf('}', open);
            if (close < 0 || !int.TryParse(Template.AsSpan(open + 1, close - open - 1), System.Globalization.NumberStyles.None,
                System.Globalization.CultureInfo.InvariantCulture, out var index) || index >= Figures.Length)
            {
                throw new ArgumentException($"The placeholder at {open} of \"{Template}\" has no figure.");
            }

            if (open > position) yield return (Template[position..open], null);
            yield return (null, Figures[index]);
            position = close + 1;
        }
    }

    /// <summary>The sentence as it is read.</summary>
    /// <returns><see cref="Text"/>.</returns>
    public override string ToString() => Text;
}
