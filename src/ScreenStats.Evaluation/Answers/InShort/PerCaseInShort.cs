using System.Collections.Immutable;
using ScreenStats.Evaluation.Clusters;
using ScreenStats.Evaluation.Model;
using ScreenStats.Evaluation.Shared;
using ScreenStats.Evaluation.Yield;

namespace ScreenStats.Evaluation.Answers.InShort;

/// <summary>How much screening was done for each case, in one sentence.</summary>
internal static class PerCaseInShort
{
    private const string Among = "people never confirmed, or infected and tested negative, are not among them";

    /// <summary>There are runs, and a confirmatory export.</summary>
    public static Sentence Of(YieldFindings findings)
    {
        var perCase = findings.RunsPerCase;
        if (perCase.Estimate is null)
        {
            return new Sentence(
                "{0} runs found no case, so that with {1} confidence one case takes at least {2} runs; " + Among.Replace("among them", "seen", StringComparison.Ordinal) + ".",
                Figure.Count("yield.runs", findings.Runs), Say.Confidence("yield.runsPerCase.confidence", perCase.Confidence), Say.Ratio("yield.runsPerCase.widenedLower", perCase.WidenedLower));
        }

        ImmutableArray<FigureReference> sites = perCase.FewSites is { } count ? [Figure.Count("yield.runsPerCase.fewSites", count)] : [];
        return new Sentence(
            "{0} runs found {1} " + Figure.Plural(findings.Cases, "case", "cases") + ", {2} for each ({3} interval {4} to {5}" + (sites.IsEmpty ? "" : ", of these {7} sites") + ")"
            + (perCase.Found < ProportionFinding.FewBelow ? " [few counts]" : "") + ", where a case is a person's first confirmed run in {6} days: " + Among + ".",
            [
                Figure.Count("yield.runs", findings.Runs), Figure.Count("yield.cases", findings.Cases), Say.Ratio("yield.runsPerCase.estimate", perCase.Estimate),
                Say.Confidence("yield.runsPerCase.confidence", perCase.Confidence), Say.Ratio("yield.runsPerCase.widenedLower", perCase.WidenedLower), Say.Ratio("yield.runsPerCase.widenedUpper", perCase.WidenedUpper),
                Figure.Count("yield.episodeDays", findings.EpisodeDays), .. sites,
            ]);
    }
}
