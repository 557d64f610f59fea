using System.Collections.Immutable;
using ScreenStats.Evaluation.Cadence;
using ScreenStats.Evaluation.Cadence.Words;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Answers;

/// <summary>How often to screen: the first paragraph of the analysis, what it costs where nothing else is known, and under what condition.</summary>
internal static class HowOften
{
    private const int Brief = 2;

    public static Answer Of(CadenceFindings findings)
    {
        // The first two paragraphs: what the option gives, and what it costs.
        var (paragraph, opening) = (0, 0);
        var text = ImmutableArray.CreateBuilder<Sentence>();
        foreach (var sentence in findings.Sentences)
        {
            if (sentence.BeginsParagraph) paragraph++;
            if (paragraph > 1) break;
            if (paragraph == 0) opening++;
            text.Add(sentence with { BeginsParagraph = false });
        }

        return new Answer(
            "how-often-to-screen", "How often should we screen?", [Reader.Manager, Reader.Consultant], text.ToImmutable(),
            [
                new Sentence(
                    "It holds for as much infection, and as many due screens taken, as the table of assumptions has, for a course of the infection as it stands there, and on average: a quarter with an outbreak, or without any case, will differ. Without screening people stay away because of symptoms only. What local rules and licensed practice ask for comes first; a negative screen does not rule out infection."),
            ])
        {
            // Which option and how sure that is; what it gives; what the last days of the data say of it.
            InShort = text.Count > Brief
                ? [.. text.Take(Math.Min(Brief, opening)), .. IncidenceSentences.Of(findings).Take(findings.Recent is null ? 0 : 1).Select(sentence => sentence with { BeginsParagraph = false })]
                : [],
        };
    }
}
