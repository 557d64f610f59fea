using System.Collections.Immutable;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Reporting.Charts.Model;

/// <summary>
/// What stands under a picture: words and sentences. A number that is a finding stands in a sentence, as a figure with its path in findings.json;
/// a number that only counts what is drawn is <see cref="Drawn"/>; a digit in plain words fails a test. Written as <c>caption + " Words." + new Sentence(…)</c>.
/// </summary>
internal sealed record Caption
{
    /// <summary>The address of a number that is no finding, but counts or dates what the picture or the table itself shows or leaves out.</summary>
    public const string OfThePage = "";

    private Caption(ImmutableArray<Sentence> sentences) => Sentences = sentences;

    /// <summary>What it says, in order.</summary>
    public ImmutableArray<Sentence> Sentences { get; init; }

    /// <summary>The caption as it is read.</summary>
    public string Text => string.Join(' ', Sentences.Select(sentence => sentence.Text.Trim()));

    /// <summary>Words without a number.</summary>
    public static implicit operator Caption(string words) =>
        new(words.Trim().Length == 0 ? [] : words.AsSpan().ContainsAny('{', '}') ? [new Sentence("{0}", new FigureReference(OfThePage, Cell.Text(words.Trim()), Unit.Text))] : [new Sentence(words.Trim())]);

    /// <summary>One sentence.</summary>
    public static implicit operator Caption(Sentence sentence) => new([sentence]);

    /// <summary>A caption that goes on.</summary>
    public static Caption operator +(Caption first, Caption then) => new(first.Sentences.AddRange(then.Sentences));

    /// <summary>Several sentences as one caption.</summary>
    public static Caption Of(IEnumerable<Sentence> sentences) => new([.. sentences]);

    /// <summary>How many marks, rows or levels the picture shows or leaves out: a number of the page, none of the findings.</summary>
    public static FigureReference Drawn(long count) => new(OfThePage, Cell.Count(count), Unit.Count);

    /// <summary>Words with numbers that stand in the picture itself, or are read off it: of the page, none of the findings.</summary>
    public static Caption OfPicture(string words) => words.Trim().Length == 0 ? "" : new Sentence("{0}", Shown(words.Trim()));

    /// <summary>Words that stand in the picture, with their numbers.</summary>
    public static FigureReference Shown(string words) => new(OfThePage, Cell.Text(words), Unit.Text);

    /// <summary>The caption as it is read.</summary>
    public override string ToString() => Text;
}
