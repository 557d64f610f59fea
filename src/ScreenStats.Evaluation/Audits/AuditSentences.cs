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

        return sentences.ToImmutable();
    }
}
