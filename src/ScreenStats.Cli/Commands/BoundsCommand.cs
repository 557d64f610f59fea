using System.Collections.Immutable;
using System.CommandLine;
using ScreenStats.Cli.Parsing;
using ScreenStats.Cli.Results;
using ScreenStats.Cli.Terminal;
using ScreenStats.Statistics;
using ScreenStats.Statistics.Bounds;
using ScreenStats.Statistics.Verification;

namespace ScreenStats.Cli.Commands;

/// <summary><c>bounds</c>: what the counts alone prove of a screen's accuracy.</summary>
internal sealed class BoundsCommand : RunnerCommand
{
    private const long Batch = 100;
    private const int Batches = 5;

    private readonly VerificationOptions options;
    private readonly Option<string> claimed;
    private readonly Option<string> missedShare;
    private readonly Option<string> confidence;

    public BoundsCommand()
        : base("bounds", "What the counts alone prove of a screen's accuracy",
            "screenstats bounds --positives 86/140 --unverified-negatives 95860 --claimed-specificity 0.997",
            "screenstats bounds --positives 231/263 --negatives 27/81 --unverified-positives 166 --unverified-negatives 140")
    {
        options = TakeVerification();
        claimed = TakeOption("--claimed-specificity", "share", "A specificity to hold against the positivity.");
        missedShare = TakeOption("--missed-share", "share", "The share of further audited negatives that will be found missed. Default as found so far, 0 where none was audited.");
        confidence = TakeOption("--confidence", "fraction", "Confidence of the intervals. Default 0.95.");
        TakeJson();
    }

    public override int Run(Invocation invocation)
    {
        var counts = options.Counts(invocation);
        var confirmatory = options.Confirmatory(invocation);
        var level = Figures.Confidence("--confidence", invocation.Text(confidence) ?? "0.95");
        ProbabilityFigure? claim = invocation.Text(claimed) is { } claimText ? Figures.Probability("--claimed-specificity", claimText) : null;
        var share = invocation.Text(missedShare) is { } text ? Figures.Probability("--missed-share", text).Value : null;

        var stated = confirmatory is var (sensitivity, specificity)
            ? new ConfirmatoryAccuracy(VerificationOptions.Statement(sensitivity).IntervalAt(level), VerificationOptions.Statement(specificity).IntervalAt(level))
            : ConfirmatoryAccuracy.Perfect;
        var region = AccuracyBounds.Of(counts, stated, level);
        var proof = SpecificityProof.FromPositivity(counts.Positives, counts.Positives + counts.Negatives, level);
        var expected = share ?? (counts.VerifiedNegatives > 0 ? (double)counts.Missed / counts.VerifiedNegatives : 0);
        var gains = AccuracyBounds.AfterAudits(counts, Batch, Batches, expected);
        var result = new BoundsResult(
            VerifiedRow.OfPositives(counts), VerifiedRow.OfNegatives(counts), level,
            AccuracyBounds.MethodName + ", " + ImbensManski.MethodName,
            Item(region[AccuracyMeasure.Sensitivity]), Item(region[AccuracyMeasure.Specificity]), Item(region[AccuracyMeasure.Prevalence]),
            Item(region[AccuracyMeasure.PositivePredictiveValue]), Item(region[AccuracyMeasure.NegativePredictiveValue]),
            Limits(region.InfectedPositives, null), Limits(region.InfectedNegatives, null), [.. region.Corners.Select(Corner)], Proof(proof, claim),
            [.. gains.Select(Gain)], Remarks(counts, region, confirmatory is not null));

        if (WantsJson(invocation)) invocation.Output.Write(ResultJson.Write(result));
        else Render(result, expected, invocation.Screen);
        return ExitCode.Done;
    }

    private static RegionItem Item(BoundedFigure figure)
    {
        var why = figure.Reason?.Describe();
        return new RegionItem(
            Figure.Of(figure.Bounds?.Lower, why), Figure.Of(figure.Bounds?.Upper, why), Figure.Of(figure.ConfidenceInterval?.Lower, why),
            Figure.Of(figure.ConfidenceInterval?.Upper, why), Figure.Of(figure.CriticalValue, why));
    }

    private static LimitsItem Limits(Interval? interval, UndefinedReason? reason) =>
        new(Figure.Of(interval?.Lower, reason?.Describe()), Figure.Of(interval?.Upper, reason?.Describe()));

    private static CornerItem Corner(RegionCorner corner) => new(
        corner.InfectedPositives, corner.InfectedNegatives, Figure.Of(corner.Sensitivity, UndefinedReason.NoCases.Describe()),
        Figure.Of(corner.Specificity, UndefinedReason.NobodyWithoutTheCondition.Describe()), Figure.Of(corner.Prevalence, UndefinedReason.NoTrials.Describe()),
        Figure.Of(corner.PositivePredictiveValue, UndefinedReason.NoTrials.Describe()), Figure.Of(corner.NegativePredictiveValue, UndefinedReason.NoTrials.Describe()));

    private static ProofItem Proof(ProvenSpecificity proof, ProbabilityFigure? claim)
    {
        var why = proof.Reason?.Describe();
        return new ProofItem(
            Figure.Of(proof.Positivity, why), Figure.Of(proof.PositivityUpper, why), Figure.Of(proof.Specificity, why), Figure.Of(proof.SpecificityLower, why),
            Figure.Of(claim?.Value, claim is null ? "no specificity was claimed" : UndefinedReason.NoTrials.Describe()), claim?.Value is { } value && proof.Refutes(value));
    }

    private static AuditGainItem Gain(AuditGain gain) => new(
        gain.Audited, gain.Missed, Limits(gain.Sensitivity, UndefinedReason.NoCases), Limits(gain.Specificity, UndefinedReason.NobodyWithoutTheCondition),
        Limits(gain.Prevalence, UndefinedReason.NoTrials), Limits(gain.NegativePredictiveValue, UndefinedReason.NoTrials));

    private static ImmutableArray<string> Remarks(VerificationCounts counts, AccuracyRegion region, bool stated)
    {
        var remarks = ImmutableArray.CreateBuilder<string>();
        if (counts.Negatives == 0)
        {
            remarks.Add("No negative screen was given: what then follows for sensitivity and specificity says nothing of the screen. State the others with --unverified-negatives.");
        }

        if (!stated) remarks.Add("The confirmatory test's word is taken as the truth; state its accuracy to allow for its errors.");
        if (!region.PositivesCompatible) remarks.Add("The verified positives cannot come about with the stated accuracy of the confirmatory test but by chance.");
        if (!region.NegativesCompatible) remarks.Add("The verified negatives cannot come about with the stated accuracy of the confirmatory test but by chance.");
        return remarks.ToImmutable();
    }

    private static void Render(BoundsResult result, double expected, Screen screen)
    {
        screen.Title("What the counts alone prove");
        VerifiedTable.Write(screen, result.ScreenPositive, result.ScreenNegative);
        screen.Line();
        (string Name, RegionItem Item)[] rows =
        [
            ("sensitivity", result.Sensitivity), ("specificity", result.Specificity), ("prevalence", result.Prevalence),
            ("positive predictive value", result.PositivePredictiveValue), ("negative predictive value", result.NegativePredictiveValue),
        ];
        screen.Table(
            [new("measure"), new("at least", true), new("at most", true), new("interval from", true), new("to", true)],
            rows.Select(row => new[] { row.Name, Show.Number(row.Item.Lower), Show.Number(row.Item.Upper), Show.Number(row.Item.ConfidenceLower), Show.Number(row.Item.ConfidenceUpper) }));
        foreach (var (name, item) in rows)
        {
            if (item.Lower.Reason is { } why) screen.Line($"{name} is undefined: {why}.");
        }

        screen.Line();
        if (result.FromPositivity.Positivity.Reason is null)
        {
            screen.Text($"The positivity alone, {Show.Number(result.FromPositivity.Positivity)}, proves an average specificity of at least {Show.Number(result.FromPositivity.SpecificityAtLeast)} in these tests, "
                + $"and of at least {Show.Number(result.FromPositivity.SpecificityLower)} with one-sided confidence {Show.Confidence(result.Confidence)}, for any screen no worse than chance.");
        }

        if (result.FromPositivity.ClaimedSpecificity.Value is { } claim)
        {
            screen.Text(result.FromPositivity.ClaimRefuted
                ? $"A specificity of {Show.Number(claim)} is refuted: it would give more positives, even if nobody were infected."
                : $"A specificity of {Show.Number(claim)} is not refuted by the positivity.");
        }

        if (result.AfterAudits.Length > 1)
        {
            screen.Line();
            screen.Line($"With more audited negatives, a share of {Show.Number(expected)} of them found missed:");
            screen.Table(
                [new("audited", true), new("sensitivity from", true), new("to", true), new("prevalence from", true), new("to", true), new("negative predictive value from", true)],
                result.AfterAudits.Select(gain => new[]
                {
                    Show.Count(gain.Audited), Show.Number(gain.Sensitivity.Lower), Show.Number(gain.Sensitivity.Upper), Show.Number(gain.Prevalence.Lower),
                    Show.Number(gain.Prevalence.Upper), Show.Number(gain.NegativePredictiveValue.Lower),
                }));
        }

        screen.Line();
        foreach (var remark in result.Remarks) screen.Text(remark);
        screen.Text($"No assumption on the runs that were not verified. Intervals: Imbens and Manski, confidence {Show.Confidence(result.Confidence)}; runs are taken as independent.");
        screen.Caution();
    }
}
