using System.Collections.Immutable;
using ScreenStats.Evaluation.Answers.InShort;
using ScreenStats.Evaluation.Comparisons;
using ScreenStats.Evaluation.Model;
using ScreenStats.Evaluation.Trends;

namespace ScreenStats.Evaluation.Answers;

/// <summary>Whether sites differ, and whether it is getting better: the first sentence of each measure. The pages have the rest.</summary>
internal static class SideBySide
{
    /// <summary>Whether levels differ.</summary>
    public static Answer Differ(ComparisonFindings findings) => Of(
        "do-they-differ", $"Do {ComparisonWords.Many(findings.By)} differ?", [Reader.Consultant], DifferInShort.Of(findings), findings.Sentences,
        "It holds after adjustment for what is recorded; who was tested, and how much infection there was around a place, may still explain a difference.");

    /// <summary>Whether rates rise or fall.</summary>
    public static Answer Better(TrendFindings findings) => Of(
        "is-it-getting-better", "Is it getting better?", [Reader.Manager, Reader.Consultant], BetterInShort.Of(findings), findings.Sentences,
        "It holds for the complete weeks of these data and is no forecast. A rate may rise or fall because infection did, because others were tested, or because of a device or a lot.");

    private static Answer Of(string id, string question, ImmutableArray<Reader> readers, Sentence brief, ImmutableArray<Sentence> said, string condition)
    {
        // What each measure says first. Where nothing can be compared or followed the one sentence says so.
        ImmutableArray<Sentence> first = [.. said.Where(sentence => sentence.BeginsParagraph).Take(3)];
        if (first.IsEmpty) first = [said[0]];
        return new Answer(id, question, readers, brief, [.. first.Select(sentence => sentence with { BeginsParagraph = false })], [new Sentence(condition)]);
    }
}
