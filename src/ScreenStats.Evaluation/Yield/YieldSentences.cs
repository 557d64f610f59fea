using System.Collections.Immutable;
using ScreenStats.Evaluation.Clusters;
using ScreenStats.Evaluation.Model;
using ScreenStats.Evaluation.Shared;

namespace ScreenStats.Evaluation.Yield;

/// <summary>Yield in words.</summary>
internal static class YieldSentences
{
    public static ImmutableArray<Sentence> Of(YieldFindings findings)
    {
        var sentences = ImmutableArray.CreateBuilder<Sentence>();
        if (findings.Runs == 0) return [new Sentence("No run was counted, so there is no yield.")];
        sentences.Add(PerCase(findings));
        if (TheseSites(findings) is { } few) sentences.Add(few);
        if (findings.Cases > 0)
        {
            sentences.Add(new Sentence(
                "{0} of the {1} cases were found through a positive run and {2} through an inconclusive one.",
                Figure.Count("yield.casesThroughPositive", findings.CasesThroughPositive),
                Figure.Count("yield.cases", findings.Cases),
                Figure.Count("yield.casesThroughInconclusive", findings.CasesThroughInconclusive)));
        }

        var persons = findings.PersonsPerCase;
        if (persons.Estimate is not null)
        {
            sentences.Add(new Sentence(
                "{0} people were tested, {1} for each case ({2} interval {3} to {4})" + Few(persons) + ".",
                Figure.Count("yield.personsPerCase.done", persons.Done),
                Say.Ratio("yield.personsPerCase.estimate", persons.Estimate),
                Say.Confidence("yield.personsPerCase.confidence", persons.Confidence),
                Say.Ratio("yield.personsPerCase.lower", persons.Lower),
                Say.Ratio("yield.personsPerCase.upper", persons.Upper)));
        }

        Add(sentences, findings.TestsPerConfirmedRun, "yield.testsPerConfirmedRun", "confirmed");
        Add(sentences, findings.TestsPerRefutedRun, "yield.testsPerRefutedRun", "refuted");
        return sentences.ToImmutable();
    }

    /// <summary>Runs for each case, or at least how many where no case was found.</summary>
    public static Sentence PerCase(YieldFindings findings)
    {
        var perCase = findings.RunsPerCase;
        if (perCase.Estimate is null)
        {
            return new Sentence(
                "{0} runs found no case; with {1} confidence one case takes at least {2} runs.",
                Figure.Count("yield.runs", findings.Runs),
                Say.Confidence("yield.runsPerCase.confidence", perCase.Confidence),
                Say.Ratio("yield.runsPerCase.widenedLower", perCase.WidenedLower));
        }

        return new Sentence(
            "{0} runs found {1} " + Figure.Plural(findings.Cases, "case", "cases") + ": {2} runs for each case ({3} interval {4} to {5})" + Few(perCase) + ".",
            Figure.Count("yield.runs", findings.Runs),
            Figure.Count("yield.cases", findings.Cases),
            Say.Ratio("yield.runsPerCase.estimate", perCase.Estimate),
            Say.Confidence("yield.runsPerCase.confidence", perCase.Confidence),
            Say.Ratio("yield.runsPerCase.widenedLower", perCase.WidenedLower),
            Say.Ratio("yield.runsPerCase.widenedUpper", perCase.WidenedUpper));
    }

    /// <summary>What is not in the limits where there are fewer than five sites; null where it is.</summary>
    public static Sentence? TheseSites(YieldFindings findings) => findings.RunsPerCase is { FewSites: { } sites, WidenedLower: not null }
        ? new Sentence(
            "The limits speak of these {0} sites: so few cannot show how much sites differ, so differences between sites beyond those from week to week are not in them.",
            Figure.Count("yield.runsPerCase.fewSites", sites))
        : null;

    private static string Few(YieldFinding finding) => finding.Found < ProportionFinding.FewBelow ? " [few counts]" : "";

    private static void Add(ImmutableArray<Sentence>.Builder sentences, YieldFinding finding, string path, string word)
    {
        if (finding.Estimate is null) return;
        sentences.Add(new Sentence(
            $"There were {{0}} valid tests for each {word} positive run ({{1}} interval {{2}} to {{3}}){Few(finding)}.",
            Say.Ratio(path + ".estimate", finding.Estimate),
            Say.Confidence(path + ".confidence", finding.Confidence),
            Say.Ratio(path + ".widenedLower", finding.WidenedLower),
            Say.Ratio(path + ".widenedUpper", finding.WidenedUpper)));
    }
}
