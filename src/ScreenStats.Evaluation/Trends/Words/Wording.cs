using System.Globalization;
using ScreenStats.Evaluation.Model;
using ScreenStats.Evaluation.Shared;

namespace ScreenStats.Evaluation.Trends.Words;

/// <summary>Puts a sentence together, figure by figure: each comes back as its placeholder.</summary>
internal sealed class Wording
{
    private readonly List<FigureReference> figures = [];

    public string Add(FigureReference figure)
    {
        figures.Add(figure);
        return "{" + (figures.Count - 1).ToString(CultureInfo.InvariantCulture) + "}";
    }

    public string Count(string path, long value) => Add(Figure.Count(path, value));

    public string Name(string path, string value) => Add(Figure.Name(path, value));

    public string Day(string path, DateOnly? value) => Add(Figure.Day(path, value));

    public string Share(string path, double? value) => Add(Say.Share(path, value));

    public string Days(string path, double? value) => Add(Say.Days(path, value));

    public string Ratio(string path, double? value) => Add(Say.Ratio(path, value));

    /// <summary>The limits of a finding in brackets, with their confidence the first time.</summary>
    public string Limits(string path, EstimateFinding finding, Func<string, double?, string> say, bool confidence = false) =>
        (confidence && finding.Confidence is { } level ? Add(Say.Confidence(path + ".confidence", level)) + " limits " : "")
        + $"{say(path + ".lower", finding.Lower)} to {say(path + ".upper", finding.Upper)}";

    public Sentence Sentence(string template) => new(template, [.. figures]);
}
