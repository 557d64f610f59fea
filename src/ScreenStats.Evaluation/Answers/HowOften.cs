using System.Collections.Immutable;
using ScreenStats.Evaluation.Answers.InShort;
using ScreenStats.Evaluation.Cadence;
using ScreenStats.Evaluation.Model;
using ScreenStats.Evaluation.Worth;
using ScreenStats.Evaluation.Worth.Words;

namespace ScreenStats.Evaluation.Answers;

/// <summary>How often to screen: the first paragraph of the analysis, what it costs where nothing else is known, and under what condition.</summary>
internal static class HowOften
{
    public static Answer Of(CadenceFindings findings, WorthFindings? worth = null)
    {
        // The first two paragraphs: what the option gives, and what it costs.
        var paragraph = 0;
        var text = ImmutableArray.CreateBuilder<Sentence>();
        foreach (var sentence in findings.Sentences)
        {
            if (sentence.BeginsParagraph) paragraph++;
            if (paragraph > 1) break;
            text.Add(sentence with { BeginsParagraph = false });
        }

        if (worth is not null && RelationSentences.OfOften(worth, findings) is { } relation) text.Insert(1, relation);

        return new Answer(
            "how-often-to-screen", "How often should we screen?", [Reader.Manager, Reader.Consultant], OftenInShort.Of(findings), text.ToImmutable(),
            [
                new Sentence(
                    "It holds for as much infection, and as many due screens taken, as the table of assumptions has, for a course of the infection as it stands there, and on average: a quarter with an outbreak, or without any case, will differ. Without screening people stay away because of symptoms only. What local rules and licensed practice ask for comes first; a negative screen does not rule out infection."),
            ]);
    }
}
