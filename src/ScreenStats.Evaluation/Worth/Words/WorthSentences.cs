using System.Collections.Immutable;
using ScreenStats.Evaluation.Cadence;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Worth.Words;

/// <summary>Whether screening is worth it, in words: the verdict first.</summary>
internal static class WorthSentences
{
    public static ImmutableArray<Sentence> Of(WorthFindings findings, CadenceFindings cadence)
    {
        if (!findings.AnyStated)
            return [new Sentence("Whether screening is worth it cannot be said: the program file states no costs, and none is made up."), .. On("worth.missing", GroundSentences.Missing(findings))];
        return
        [
            .. VerdictSentences.Of(findings), .. RelationSentences.Of(findings, cadence), .. Paragraph(SpentSentences.Of(findings)), .. Paragraph([.. GroundSentences.Matters(findings), .. GroundSentences.Sample(findings)]), .. Paragraph([.. GroundSentences.Confirmation(findings), .. GroundSentences.Pools(findings), .. GroundSentences.Rule(findings)]),
            .. On("worth.counted", GroundSentences.Counted(findings, cadence)), .. On("worth.missing", GroundSentences.Missing(findings)),
        ];
    }

    private static IEnumerable<Sentence> Paragraph(IEnumerable<Sentence> sentences) =>
        sentences.Select((sentence, index) => index == 0 ? sentence with { BeginsParagraph = true } : sentence);

    // What is counted and what is missing has no figures by which a page could place it.
    private static IEnumerable<Sentence> On(string topic, IEnumerable<Sentence> sentences) => Paragraph(sentences).Select(sentence => sentence with { Topic = topic });
}
