using System.Collections.Immutable;
using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Programs;
using ScreenStats.Evaluation.Clusters;
using ScreenStats.Evaluation.Model;
using ScreenStats.Evaluation.Shared;

namespace ScreenStats.Evaluation.FollowThrough;

/// <summary>Follow-up in words.</summary>
internal static class FollowUpSentences
{
    public static ImmutableArray<Sentence> Of(FollowUpFinding positive, FollowUpFinding inconclusive, Tally tally, ProgramSettings settings)
    {
        var sentences = ImmutableArray.CreateBuilder<Sentence>();
        if (!tally.Cells.HasConfirmatory)
        {
            sentences.Add(new Sentence("There is no confirmatory export, so every run that called for a confirmatory test counts as unverified."));
        }

        foreach (var finding in (ReadOnlySpan<FollowUpFinding>)[positive, inconclusive])
        {
            var name = LevelNames.Of(finding.Outcome);
            var path = "followUp." + name;
            if (!settings.Policy.FollowUp.Contains(finding.Outcome))
            {
                sentences.Add(new Sentence($"The program's policy does not follow up {name} runs."));
                continue;
            }

            if (finding.Due == 0)
            {
                sentences.Add(new Sentence($"There was no {name} run that called for a confirmatory test."));
                continue;
            }

            sentences.Add(new Sentence(
                $"Of {{0}} {name} runs that called for a confirmatory test, {{1}} got a conclusive result: {{2}} ({{3}} interval {{4}} to {{5}}){ShareWords.Few(finding.FollowThrough)}.",
                Figure.Count(path + ".due", finding.Due),
                Figure.Count(path + ".conclusive", finding.Conclusive),
                Say.Share(path + ".followThrough.estimate", finding.FollowThrough.Estimate),
                Say.Confidence(path + ".followThrough.confidence", finding.FollowThrough.Confidence),
                Say.Share(path + ".followThrough.widenedLower", finding.FollowThrough.WidenedLower),
                Say.Share(path + ".followThrough.widenedUpper", finding.FollowThrough.WidenedUpper)));
            sentences.Add(new Sentence(
                "{0} were confirmed, {1} refuted, {2} unresolved, {3} pending and {4} never verified; these add up to {5}.",
                Figure.Count(path + ".confirmed", finding.Confirmed),
                Figure.Count(path + ".refuted", finding.Refuted),
                Figure.Count(path + ".unresolved", finding.Unresolved),
                Figure.Count(path + ".pending", finding.Pending),
                Figure.Count(path + ".unverified", finding.Unverified),
                Figure.Count(path + ".due", finding.Due)));
        }

        return sentences.ToImmutable();
    }
}
