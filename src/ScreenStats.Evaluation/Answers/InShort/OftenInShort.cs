using ScreenStats.Evaluation.Cadence;
using ScreenStats.Evaluation.Cadence.Rows;
using ScreenStats.Evaluation.Cadence.Words;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Answers.InShort;

/// <summary>How often to screen, in one sentence: the option and how sure it is, what it gives and for how much infection, and what the last days of the data would choose.</summary>
internal static class OftenInShort
{
    /// <summary>What is known.</summary>
    public static Sentence Of(CadenceFindings findings)
    {
        var figures = new CadenceFigures(findings);
        if (findings.Leading is not { } leading || !figures.Knows(leading, CadenceMeasure.InfectiousDaysRemoved)) return findings.Sentences[0] with { BeginsParagraph = false };
        if (leading.IsNone) return OpeningSentences.InShort(findings, figures, leading, "", "");
        var removed = figures.Of(leading, CadenceMeasure.InfectiousDaysRemoved);
        var brought = findings.LeadingBasis == CadenceBasis.AllBroughtIn ? ", all brought in," : "";
        var recent = findings.Recent;
        var of = recent is { Option: { } option } && option != leading.Option ? $"; as {(recent.Ratio.Estimate > 1 ? "common" : "rare")} as in the last {{11}} days, \"{{12}}\"" : "";
        return OpeningSentences.InShort(
            findings, figures, leading, $"with infection as assumed{brought} it removes {{6}} infectious days outside isolation in {{5}} {figures.DaysWord} ({{7}} interval {{8}} to {{9}}) for {{10}} {figures.PeopleWord}", of,
            figures.Days, removed[0], figures.Confidence, removed[1], removed[2], figures.People,
            Figure.Count("cadence.recent.days", recent?.Days ?? 0), Figure.Name("cadence.recent.option", recent?.Option ?? ""));
    }
}
