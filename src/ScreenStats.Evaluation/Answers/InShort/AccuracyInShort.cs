using ScreenStats.Counting.Cubes;
using ScreenStats.Evaluation.Accuracy;
using ScreenStats.Evaluation.Clusters;
using ScreenStats.Evaluation.Model;
using ScreenStats.Evaluation.Shared;

namespace ScreenStats.Evaluation.Answers.InShort;

/// <summary>How accurate the screen was, in one sentence: sensitivity and specificity, or what is known of them.</summary>
internal static class AccuracyInShort
{
    private const string Then = "a negative screen does not rule out infection";

    /// <summary>What is known.</summary>
    public static Sentence Of(AccuracyFindings findings)
    {
        if (findings is { Sensitivity: { Estimate: not null } sensitivity, Specificity: { Estimate: not null } specificity })
        {
            var fewSites = findings.Rows.FirstOrDefault(row => row.Grouping == Grouping.Program && row.FewSites is not null && row.Figure == sensitivity);
            return new Sentence(
                "Sensitivity was {0} ({1} interval {2} to {3})" + (findings.Missed < ProportionFinding.FewBelow ? " [few counts]" : "")
                + " and specificity {4} ({5} to {6}) against the confirmatory test, if chance alone chose which runs were verified" + (findings.Basis == AccuracyBasis.Unweighted ? " and strata are alike" : "")
                + (fewSites is null ? "" : ", for these {7} sites alone") + $"; {Then}.",
                [Say.Share("accuracy.sensitivity.estimate", sensitivity.Estimate), Say.Confidence("accuracy.sensitivity.confidence", sensitivity.Confidence ?? 0.95),
                Say.Share("accuracy.sensitivity.lower", sensitivity.Lower), Say.Share("accuracy.sensitivity.upper", sensitivity.Upper),
                Say.Share("accuracy.specificity.estimate", specificity.Estimate),
                Say.Share("accuracy.specificity.lower", specificity.Lower), Say.Share("accuracy.specificity.upper", specificity.Upper),
                .. fewSites is null ? (FigureReference[])[] : [Figure.Count(FigurePath.Row("accuracy.rows", fewSites.Key) + ".fewSites", fewSites.FewSites!.Value)]]);
        }

        if (findings.Sensitivity.Estimate is null && findings.SensitivityLimit.Lower is not null)
        {
            return new Sentence(
                (findings.Missed == 0
                    ? "None of {0} negative runs audited with a conclusive result was missed: in these tests"
                    : "Only {0} negative runs were audited with a conclusive result: in these tests")
                + " sensitivity was at least {1} and specificity at least {2} (both at once, one-sided, {3} confidence), if chance alone chose those audited; " + Then + ".",
                Figure.Count("accuracy.audited", findings.Audited), Say.Share("accuracy.sensitivityLimit.lower", findings.SensitivityLimit.Lower),
                Say.Share("accuracy.specificityLimit.lower", findings.SpecificityLimit.Lower), Say.Confidence("accuracy.sensitivityLimit.confidence", findings.SensitivityLimit.Confidence));
        }

        if (findings.Proven[0] is not { SpecificityLower: > 0 } program) return new Sentence($"These data cannot say, as no negative run was audited with a conclusive result; {Then}.");
        var path = FigurePath.Row("accuracy.proven", program.Key);
        return new Sentence(
            "Specificity was at least {0} on average (one-sided, {1} confidence), by the positivity alone; sensitivity these data cannot say"
            + (findings.Basis == AccuracyBasis.None ? ", as no negative run was audited with a conclusive result" : "") + $": {Then}.",
            Say.Share(path + ".specificityLower", program.SpecificityLower), Say.Confidence(path + ".confidence", program.Confidence));
    }
}
