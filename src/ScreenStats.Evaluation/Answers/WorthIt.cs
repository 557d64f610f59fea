using System.Collections.Immutable;
using ScreenStats.Evaluation.Model;
using ScreenStats.Evaluation.Worth;
using ScreenStats.Evaluation.Worth.Words;

namespace ScreenStats.Evaluation.Answers;

/// <summary>Whether screening is worth it: the verdict with its condition, what would be best, and what it rests on.</summary>
internal static class WorthIt
{
    public static Answer Of(WorthFindings findings)
    {
        ImmutableArray<Sentence> text = [.. findings.VerdictSentences.Select(sentence => sentence with { BeginsParagraph = false })];
        return new Answer(
            "is-screening-worth-it", "Is screening worth it?", [Reader.Analyst, Reader.Manager], text,
            [
                new Sentence(
                    "It holds at the prices of the program file and for as much infection as in these data, and it counts what is priced and nothing else. Whether people are screened is for those responsible to decide under local rules, not for a sum; a negative screen does not rule out infection."),
            ])
        {
            // The verdict with its condition, how much infection there was, and how sure it is: never the one without the other.
            InShort = InShortSentences.Of(findings) is { } brief ? [brief] : text.Length > Short(findings) ? [.. text.Take(Short(findings))] : [],
        };
    }

    private static int Short(WorthFindings findings) => findings.Ladder.IsEmpty ? 2 : 3;
}
