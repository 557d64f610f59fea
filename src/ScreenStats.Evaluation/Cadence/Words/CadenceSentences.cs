using System.Collections.Immutable;
using ScreenStats.Evaluation.Cadence.Rows;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Cadence.Words;

/// <summary>How often to screen, in words: the answer, what it costs, what it rests on, what was really done, and what is not known.</summary>
internal static class CadenceSentences
{
    public static ImmutableArray<Sentence> Of(CadenceFindings findings)
    {
        if (findings.People == 0 || findings.Leading is not { } leading) return [new Sentence("Nobody was tested, so there is nothing to say about how often to screen.")];
        var text = ImmutableArray.CreateBuilder<Sentence>();
        text.AddRange(AnswerSentences.Of(findings, leading));
        text.AddRange(IncidenceSentences.Of(findings));
        text.AddRange(Paragraph(BurdenSentences.Of(findings, leading).Concat(CauseSentences.FalseAlarms(findings))));
        text.AddRange(Paragraph(GroundSentences.Matters(findings).Concat(CauseSentences.Growth(findings)).Concat(CauseSentences.Audits(findings))));
        text.AddRange(Paragraph(PracticeSentences.Of(findings)));
        text.AddRange(Paragraph(GroundSentences.Incidence(findings)));
        text.AddRange(Paragraph(GroundSentences.Missing(findings)));
        return text.ToImmutable();
    }

    private static IEnumerable<Sentence> Paragraph(IEnumerable<Sentence> sentences) =>
        sentences.Select((sentence, index) => index == 0 ? sentence with { BeginsParagraph = true } : sentence);
}
