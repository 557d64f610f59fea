using System.Collections.Immutable;
using ScreenStats.Evaluation.Cadence;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Worth.Words;

/// <summary>Whether screening is worth it, in words: the verdict first.</summary>
internal static class WorthSentences
{
    /// <summary>The topic of the verdict with what belongs to it.</summary>
    public const string Verdict = "worth.verdict";

    /// <summary>The topic of what is counted and what is not.</summary>
    public const string Counted = "worth.counted";

    private const string Missing = "worth.missing";

    public static ImmutableArray<Sentence> Of(WorthFindings findings, CadenceFindings cadence)
    {
        if (!findings.AnyStated)
            return [.. On(Verdict, [new Sentence("Whether screening is worth it cannot be said: the program file states no costs, and none is made up.")]), .. On(Missing, GroundSentences.Missing(findings))];
        return
        [
            .. On(Verdict, [.. VerdictSentences.Of(findings), .. RelationSentences.Of(findings, cadence)]), .. Paragraph(SpentSentences.Of(findings)), .. Paragraph([.. GroundSentences.Matters(findings), .. GroundSentences.Sample(findings)]), .. Paragraph([.. GroundSentences.Confirmation(findings), .. GroundSentences.Pools(findings), .. GroundSentences.Rule(findings)]),
            .. On(Counted, GroundSentences.Counted(findings, cadence)), .. On(Missing, GroundSentences.Missing(findings)),
        ];
    }

    private static IEnumerable<Sentence> Paragraph(IEnumerable<Sentence> sentences) =>
        sentences.Select((sentence, index) => index == 0 ? sentence with { BeginsParagraph = true } : sentence);

    // Not all of these have figures by which a page could place them.
    private static IEnumerable<Sentence> On(string topic, IEnumerable<Sentence> sentences) => Paragraph(sentences).Select(sentence => sentence with { Topic = topic });
}
