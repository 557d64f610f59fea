using System.Collections.Immutable;
using ScreenStats.Evaluation.Answers.InShort;
using ScreenStats.Evaluation.Cadence;
using ScreenStats.Evaluation.Model;
using ScreenStats.Evaluation.Worth;
using ScreenStats.Evaluation.Worth.Words;

namespace ScreenStats.Evaluation.Answers;

/// <summary>Whether screening is worth it: the verdict with its condition, what would be best, and what it rests on.</summary>
internal static class WorthIt
{
    public static Answer Of(WorthFindings findings, CadenceFindings cadence)
    {
        // Which option is judged comes right after the verdict: the answer of how often to screen may name another.
        var said = findings.VerdictSentences;
        var relation = RelationSentences.Between(findings, cadence);
        ImmutableArray<Sentence> text =
        [
            .. said.Take(1).Concat(relation is null ? [] : [relation]).Concat(said.Skip(1).Where(sentence => sentence.Text != relation?.Text)).Select(sentence => sentence with { BeginsParagraph = false }),
        ];
        return new Answer(
            "is-screening-worth-it", "Is screening worth it?", [Reader.Manager, Reader.Analyst], WorthInShort.Of(findings), text,
            [
                new Sentence(
                    "It holds at the prices of the program file and for as much infection as in these data, and it counts what is priced and nothing else. Whether people are screened is for those responsible to decide under local rules, not for a sum; a negative screen does not rule out infection."),
            ]);
    }
}
