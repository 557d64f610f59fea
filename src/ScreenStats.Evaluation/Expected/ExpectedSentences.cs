using System.Collections.Immutable;
using ScreenStats.Evaluation.Model;
using ScreenStats.Evaluation.Shared;

namespace ScreenStats.Evaluation.Expected;

/// <summary>Expected against observed in words.</summary>
internal static class ExpectedSentences
{
    public static ImmutableArray<Sentence> Of(ExpectedFindings findings)
    {
        if (findings.Devices.IsEmpty)
        {
            return [new Sentence("The program file describes no screening device, so there is no stated accuracy to compare with.")];
        }

        var sentences = ImmutableArray.CreateBuilder<Sentence>();
        foreach (var device in findings.Devices) Add(sentences, device, findings);
        if (findings.Devices.Any(device => device.CorrectedPrevalence.Estimate is not null))
        {
            sentences.Add(new Sentence(
                "A corrected prevalence rests on the device's stated accuracy, so it cannot judge that accuracy or the predictive value that follows from it: that would be circular."));
        }

        return sentences.ToImmutable();
    }

    private static void Add(ImmutableArray<Sentence>.Builder sentences, DeviceFinding device, ExpectedFindings findings)
    {
        var path = FigurePath.Row("expected.devices", device.Device);
        var name = Figure.Name(path + ".device", device.Device);
        if (device.ValidTests == 0)
        {
            sentences.Add(new Sentence("{0}: no valid test in these data is of this device.", name));
            return;
        }

        var refuted = Figure.Count(path + ".refuted", device.Refuted);
        var tests = Figure.Count(path + ".validTests", device.ValidTests);
        if (device.StatedFalsePositiveRate is null)
        {
            sentences.Add(new Sentence("{0}: {1} of {2} valid tests were positive and refuted; no specificity is stated to compare with.", name, refuted, tests));
        }
        else
        {
            ImmutableArray<FigureReference> figures =
            [
                name, refuted, tests,
                Figure.Share(path + ".refutedRate", device.RefutedRate),
                Say.Confidence(path + ".refutedRate.confidence", device.RefutedRate.Confidence),
                Figure.Lower(path + ".refutedRate", device.RefutedRate),
                Figure.Upper(path + ".refutedRate", device.RefutedRate),
                Say.Share(path + ".statedFalsePositiveRate", device.StatedFalsePositiveRate),
            ];
            var bound = "";
            if (device.WithoutConclusion > 0)
            {
                bound = "; up to {8} if every positive without a conclusive result were refuted";
                figures = figures.Add(Say.Share(path + ".refutedRateBoundUpper", device.RefutedRateBoundUpper));
            }

            sentences.Add(new Sentence(
                $"{{0}}: {{1}} of {{2}} valid tests were positive and refuted, {{3}} ({{4}} interval {{5}} to {{6}}{bound}), "
                + $"where the stated specificity lets expect {{7}}: {Outcome(device.Compatibility)}, because {device.Explanation}.",
                figures));
        }

        if (device.PositivityBelowStatedRate)
        {
            sentences.Add(new Sentence(
                "{0}: fewer tests were positive than the stated specificity alone would give, so the corrected prevalence is 0"
                + (device.Compatibility == Compatibility.NotCompatible ? " and the stated specificity is not compatible with these data." : "; as it stands the stated specificity is not compatible with these data, but chance alone may explain that."),
                name));
        }

        if (device.ExpectedPositivePredictiveValueWithPrevalence is { Estimate: not null } expected)
        {
            var limits = expected.Lower is null ? "" : " ({3} to {4})";
            ImmutableArray<FigureReference> spoken = [
                name,
                Say.Share("expected.prevalence", findings.Prevalence),
                Say.Share(path + ".expectedPositivePredictiveValueWithPrevalence.estimate", expected.Estimate)];
            if (expected.Lower is not null)
            {
                spoken = [.. spoken,
                    Say.Share(path + ".expectedPositivePredictiveValueWithPrevalence.lower", expected.Lower),
                    Say.Share(path + ".expectedPositivePredictiveValueWithPrevalence.upper", expected.Upper)];
            }

            sentences.Add(new Sentence("{0}: at the external prevalence of {1} its stated accuracy lets expect that {2}" + limits + " of positive runs are true.", spoken));
        }
    }

    private static string Outcome(Compatibility outcome) => outcome switch
    {
        Compatibility.Compatible => "compatible",
        Compatibility.NotCompatible => "not compatible",
        Compatibility.CannotTell => "cannot tell",
        _ => "not judged",
    };
}
