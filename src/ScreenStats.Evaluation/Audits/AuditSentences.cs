using System.Collections.Immutable;
using ScreenStats.Evaluation.Clusters;
using ScreenStats.Evaluation.Model;
using ScreenStats.Evaluation.Shared;

namespace ScreenStats.Evaluation.Audits;

/// <summary>Audits in words.</summary>
internal static class AuditSentences
{
    public static ImmutableArray<Sentence> Of(AuditFindings findings, double confidence)
    {
        var program = findings.Program;
        if (program.Audited == 0)
        {
            return
            [
                new Sentence(
                    "No negative run was audited, so sensitivity, specificity and negative predictive value are undefined: nothing in these data says how many infected people tested negative."),
            ];
        }

        var sentences = ImmutableArray.CreateBuilder<Sentence>();
        sentences.Add(new Sentence(
            "Of {0} negative runs {1} were audited: {2} agreed, {3} missed and {4} unresolved.",
            Figure.Count("audits.negativeRuns", findings.NegativeRuns),
            Figure.Count("audits.program.audited", program.Audited),
            Figure.Count("audits.program.agreed", program.Agreed),
            Figure.Count("audits.program.missed", program.Missed),
            Figure.Count("audits.program.unresolved", program.Unresolved)));
        var value = program.NegativePredictiveValue;
        if (value.Trials > 0)
        {
            sentences.Add(new Sentence(
                $"Among those audited with a conclusive result the negative predictive value was {{0}} ({{1}} of {{2}}; {{3}} interval {{4}} to {{5}}){ShareWords.Few(value)}.",
                Figure.Share("audits.program.negativePredictiveValue", value),
                Figure.Count("audits.program.negativePredictiveValue.events", value.Events),
                Figure.Count("audits.program.negativePredictiveValue.trials", value.Trials),
                Say.Confidence("audits.program.negativePredictiveValue.confidence", confidence),
                Figure.Lower("audits.program.negativePredictiveValue", value),
                Figure.Upper("audits.program.negativePredictiveValue", value)));
        }

        Add(sentences, findings, "sensitivity", "audits.sensitivity", findings.Sensitivity);
        Add(sentences, findings, "specificity", "audits.specificity", findings.Specificity);
        if (findings.Sensitivity.Estimate is not null || findings.Specificity.Estimate is not null)
        {
            sentences.Add(new Sentence($"Both hold only if {findings.Assumption}, and both are against the confirmatory test, not the truth."));
        }

        return sentences.ToImmutable();
    }

    private static void Add(ImmutableArray<Sentence>.Builder sentences, AuditFindings findings, string name, string path, EstimateFinding value)
    {
        if (value.Estimate is null)
        {
            sentences.Add(new Sentence($"The {name} is undefined: {value.EstimateUndefined}."));
            return;
        }

        var few = name == "sensitivity" && findings.Program.Missed < ProportionFinding.FewBelow ? " [few counts]" : "";
        sentences.Add(new Sentence(
            $"Corrected for the negative runs that were not audited, the {name} is {{0}} ({{1}} interval {{2}} to {{3}}){few}.",
            Say.Share(path + ".estimate", value.Estimate),
            Say.Confidence(path + ".confidence", value.Confidence ?? 0.95),
            Say.Share(path + ".lower", value.Lower),
            Say.Share(path + ".upper", value.Upper)));
    }
}
