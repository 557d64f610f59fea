using System.Collections.Immutable;
using ScreenStats.Evaluation.Clusters;
using ScreenStats.Evaluation.Model;
using ScreenStats.Evaluation.Shared;

namespace ScreenStats.Evaluation.PredictiveValues;

/// <summary>Predictive values in words.</summary>
internal static class PredictiveValueSentences
{
    public static ImmutableArray<Sentence> Of(PredictiveValueFindings findings)
    {
        var sentences = ImmutableArray.CreateBuilder<Sentence>();
        var observed = findings.Observed;
        if (observed.Trials == 0)
        {
            sentences.Add(new Sentence("No positive run was confirmed or refuted, so the positive predictive value is undefined."));
        }
        else
        {
            sentences.Add(Observed(observed));
            sentences.Add(ShareWords.Widening("predictiveValue.observed", observed));
        }

        if (observed.Trials > 0 && findings.Bounds.WithoutConclusion > 0) sentences.Add(Bounds(findings.Bounds));
        if (!findings.FlaggedLots.IsEmpty) sentences.Add(WithoutFlaggedLots(findings));
        if (findings.Corrected.Estimate is not null)
        {
            sentences.Add(new Sentence(
                "Corrected for the stated accuracy of the confirmatory test it is {0} ({1} to {2}).",
                Say.Share("predictiveValue.corrected.estimate", findings.Corrected.Estimate),
                Say.Share("predictiveValue.corrected.lower", findings.Corrected.Lower),
                Say.Share("predictiveValue.corrected.upper", findings.Corrected.Upper)));
        }
        else if (observed.Trials > 0)
        {
            sentences.Add(new Sentence("Refuted is the confirmatory test's word, not the truth: " + findings.Corrected.EstimateUndefined + ", so no corrected value is given."));
        }

        if (findings.Inconclusive.Trials > 0)
        {
            sentences.Add(Value(
                "Inconclusive runs are kept apart: of {0} that were confirmed or refuted, {1} were confirmed, {2} ({3} interval {4} to {5})",
                findings.Inconclusive, "predictiveValue.inconclusive"));
        }

        return sentences.ToImmutable();
    }

    /// <summary>The observed value with its interval. There is at least one positive run with a conclusion.</summary>
    public static Sentence Observed(ProportionFinding observed) => Value(
        "Of {0} positive runs that were confirmed or refuted, {1} were confirmed: {2} ({3} interval {4} to {5})", observed, "predictiveValue.observed");

    /// <summary>What the value would be without the flagged lots. There is at least one.</summary>
    public static Sentence WithoutFlaggedLots(PredictiveValueFindings findings)
    {
        const string Path = "predictiveValue.withoutFlaggedLots";
        var without = findings.WithoutFlaggedLots;
        var kind = Figure.Plural(findings.FlaggedLots.Length, "lot", "lots");
        if (without.Trials == 0)
        {
            var (alone, some) = Say.Names("predictiveValue.flaggedLots", findings.FlaggedLots, 0);
            return new Sentence($"Without the runs of the flagged {kind} {alone} no positive run was confirmed or refuted.", [.. some]);
        }

        var (names, figures) = Say.Names("predictiveValue.flaggedLots", findings.FlaggedLots, 6);
        return new Sentence(
            $"Without the runs of the flagged {kind} {names} it would be {{0}} ({{1}} of {{2}}; {{3}} interval {{4}} to {{5}}){ShareWords.Few(without)}.",
            [
                Figure.Share(Path, without),
                Figure.Count(Path + ".events", without.Events),
                Figure.Count(Path + ".trials", without.Trials),
                Say.Confidence(Path + ".confidence", without.Confidence),
                Figure.Lower(Path, without),
                Figure.Upper(Path, without),
                .. figures,
            ]);
    }

    /// <summary>What the runs without a conclusion leave possible. There is at least one.</summary>
    public static Sentence Bounds(PredictiveValueBounds bounds) => new(
        "{0} of {1} positive runs have no conclusive confirmatory result: were all of them refuted the value would be {2}, were all confirmed {3}.",
        Figure.Count("predictiveValue.bounds.withoutConclusion", bounds.WithoutConclusion),
        Figure.Count("predictiveValue.bounds.positives", bounds.Positives),
        Say.Share("predictiveValue.bounds.lower", bounds.Lower),
        Say.Share("predictiveValue.bounds.upper", bounds.Upper));

    private static Sentence Value(string template, ProportionFinding value, string path) => new(
        template + ShareWords.Few(value) + ".",
        Figure.Count(path + ".trials", value.Trials),
        Figure.Count(path + ".events", value.Events),
        Say.Share(path + ".estimate", value.Estimate),
        Say.Confidence(path + ".confidence", value.Confidence),
        Say.Share(path + ".widenedLower", value.WidenedLower),
        Say.Share(path + ".widenedUpper", value.WidenedUpper));
}
