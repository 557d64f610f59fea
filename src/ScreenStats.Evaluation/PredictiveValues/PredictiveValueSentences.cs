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
            sentences.Add(Value("Of {0} positive runs that were confirmed or refuted, {1} were confirmed: {2} ({3} interval {4} to {5})", observed, "predictiveValue.observed"));
        }

        if (findings.Bounds is { WithoutConclusion: > 0, Lower: not null } bounds && observed.Trials > 0)
        {
            sentences.Add(new Sentence(
                "{0} of {1} positive runs have no conclusive confirmatory result: were all of them refuted the value would be {2}, were all confirmed {3}.",
                Figure.Count("predictiveValue.bounds.withoutConclusion", bounds.WithoutConclusion),
                Figure.Count("predictiveValue.bounds.positives", bounds.Positives),
                Say.Share("predictiveValue.bounds.lower", bounds.Lower),
                Say.Share("predictiveValue.bounds.upper", bounds.Upper)));
        }

        if (!findings.FlaggedLots.IsEmpty)
        {
            var lots = string.Join(", ", findings.FlaggedLots);
            sentences.Add(findings.WithoutFlaggedLots.Trials == 0
                ? new Sentence("Without the runs of the flagged " + Figure.Plural(findings.FlaggedLots.Length, "lot", "lots") + " {0} no positive run was confirmed or refuted.", Figure.Name("predictiveValue.flaggedLots", lots))
                : new Sentence(
                    "Without the runs of the flagged " + Figure.Plural(findings.FlaggedLots.Length, "lot", "lots") + " {0} it would be {1} ({2} of {3}; {4} interval {5} to {6}).",
                    Figure.Name("predictiveValue.flaggedLots", lots),
                    Say.Share("predictiveValue.withoutFlaggedLots.estimate", findings.WithoutFlaggedLots.Estimate),
                    Figure.Count("predictiveValue.withoutFlaggedLots.events", findings.WithoutFlaggedLots.Events),
                    Figure.Count("predictiveValue.withoutFlaggedLots.trials", findings.WithoutFlaggedLots.Trials),
                    Say.Confidence("predictiveValue.withoutFlaggedLots.confidence", findings.WithoutFlaggedLots.Confidence),
                    Say.Share("predictiveValue.withoutFlaggedLots.widenedLower", findings.WithoutFlaggedLots.WidenedLower),
                    Say.Share("predictiveValue.withoutFlaggedLots.widenedUpper", findings.WithoutFlaggedLots.WidenedUpper)));
        }

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

    private static Sentence Value(string template, ProportionFinding value, string path) => new(
        template + (value.FewCounts ? "; few counts stand behind this." : "."),
        Figure.Count(path + ".trials", value.Trials),
        Figure.Count(path + ".events", value.Events),
        Say.Share(path + ".estimate", value.Estimate),
        Say.Confidence(path + ".confidence", value.Confidence),
        Say.Share(path + ".widenedLower", value.WidenedLower),
        Say.Share(path + ".widenedUpper", value.WidenedUpper));
}
