using System.Collections.Immutable;
using System.CommandLine;
using ScreenStats.Cli.Parsing;
using ScreenStats.Cli.Results;
using ScreenStats.Cli.Terminal;
using ScreenStats.Statistics;
using ScreenStats.Statistics.Bounds;
using ScreenStats.Statistics.Prevalence;
using ScreenStats.Statistics.Proportions;
using ScreenStats.Statistics.Verification;

namespace ScreenStats.Cli.Commands;

/// <summary><c>accuracy</c>: sensitivity and specificity of a screen of which only some results were verified.</summary>
internal sealed class AccuracyCommand : RunnerCommand
{
    private static readonly ImmutableArray<(AccuracyMeasure Measure, string Name)> Measures =
    [
        (AccuracyMeasure.Sensitivity, "sensitivity"), (AccuracyMeasure.Specificity, "specificity"), (AccuracyMeasure.Prevalence, "prevalence"),
        (AccuracyMeasure.PositivePredictiveValue, "positive-predictive-value"), (AccuracyMeasure.NegativePredictiveValue, "negative-predictive-value"),
    ];

    private readonly VerificationOptions options;
    private readonly Option<string> confidence;

    public AccuracyCommand()
        : base("accuracy", "Sensitivity and specificity where only some results were verified",
            "screenstats accuracy --positives 231/263 --negatives 27/81 --unverified-positives 166 --unverified-negatives 140",
            "screenstats accuracy --positives 641/1103 --unverified-positives 219 --unverified-negatives 902086 --json")
    {
        options = TakeVerification();
        confidence = TakeOption("--confidence", "fraction", "Confidence of the limits. Default 0.95.");
        TakeJson();
    }

    public override int Run(Invocation invocation)
    {
        var counts = options.Counts(invocation);
        var confirmatory = options.Confirmatory(invocation);
        var level = Figures.Confidence("--confidence", invocation.Text(confidence) ?? "0.95");

        var corrected = BeggGreenes.Of(counts, level);
        var naive = BeggGreenes.Of(
            new VerificationCounts(counts.VerifiedPositives, counts.Confirmed, counts.Refuted, counts.VerifiedNegatives, counts.Missed, counts.Agreed), level);
        var region = AccuracyBounds.Of(counts, level);
        var result = new AccuracyResult(
            VerifiedRow.OfPositives(counts), VerifiedRow.OfNegatives(counts), level,
            new AccuracyMethods("wilson", "begg-greenes, logit limits", AccuracyBounds.MethodName),
            Item(AccuracyMeasure.Sensitivity), Item(AccuracyMeasure.Specificity), Item(AccuracyMeasure.Prevalence),
            Item(AccuracyMeasure.PositivePredictiveValue), Item(AccuracyMeasure.NegativePredictiveValue),
            Covariances(corrected), Completed(counts, corrected), FalsePositives(counts), OneSided(counts, level), Confirmed(counts, confirmatory, level),
            Remarks(counts));

        if (WantsJson(invocation)) invocation.Output.Write(ResultJson.Write(result));
        else Render(result, invocation.Screen);
        return ExitCode.Done;

        AccuracyItem Item(AccuracyMeasure measure) =>
            new(Naive(naive[measure], counts, level), Corrected(corrected[measure], counts, level), Bounds(region[measure]));
    }

    private static NaiveItem Naive(AccuracyFigure figure, VerificationCounts counts, double level)
    {
        var (events, trials) = figure.Measure switch
        {
            AccuracyMeasure.Sensitivity => (counts.Confirmed, counts.Confirmed + counts.Missed),
            AccuracyMeasure.Specificity => (counts.Agreed, counts.Agreed + counts.Refuted),
            AccuracyMeasure.Prevalence => (counts.Confirmed + counts.Missed, counts.VerifiedPositives + counts.VerifiedNegatives),
            AccuracyMeasure.PositivePredictiveValue => (counts.Confirmed, counts.VerifiedPositives),
            _ => (counts.Agreed, counts.VerifiedNegatives),
        };
        var wilson = figure.IsDefined ? ProportionInterval.Wilson(events, trials, level) : null;
        var why = figure.Reason?.Describe();
        var noError = figure.StandardErrorReason?.Describe();
        return new NaiveItem(
            Figure.Of(figure.Value, why), Figure.Of(figure.StandardError, noError), Figure.Of(wilson?.Lower, why), Figure.Of(wilson?.Upper, why),
            Figure.Of(figure.Wald?.Lower, noError), Figure.Of(figure.Wald?.Upper, noError), Figure.Of(figure.Logit?.Lower, noError), Figure.Of(figure.Logit?.Upper, noError));
    }

    private static CorrectedItem Corrected(AccuracyFigure figure, VerificationCounts counts, double level)
    {
        var recovered = figure.Measure switch
        {
            AccuracyMeasure.Sensitivity => BeggGreenes.Sensitivity(counts, level).Estimate.Interval,
            AccuracyMeasure.Specificity => BeggGreenes.Specificity(counts, level).Estimate.Interval,
            _ => null,
        };
        var noError = figure.StandardErrorReason?.Describe();
        return new CorrectedItem(
            Figure.Of(figure.Value, figure.Reason?.Describe()), Figure.Of(figure.StandardError, noError),
            Figure.Of(figure.Logit?.Lower, noError), Figure.Of(figure.Logit?.Upper, noError), Figure.Of(figure.Wald?.Lower, noError), Figure.Of(figure.Wald?.Upper, noError),
            recovered?.Lower, recovered?.Upper);
    }

    private static LimitsItem Bounds(BoundedFigure figure)
    {
        var why = figure.Reason?.Describe();
        return new LimitsItem(Figure.Of(figure.Bounds?.Lower, why), Figure.Of(figure.Bounds?.Upper, why));
    }

    private static ImmutableArray<CovarianceItem> Covariances(VerifiedAccuracy accuracy) =>
    [
        .. from i in Enumerable.Range(0, Measures.Length)
           from j in Enumerable.Range(i + 1, Measures.Length - i - 1)
           let why = accuracy[Measures[i].Measure].StandardErrorReason ?? accuracy[Measures[j].Measure].StandardErrorReason
           select new CovarianceItem(Measures[i].Name, Measures[j].Name, Figure.Of(accuracy.Covariance(Measures[i].Measure, Measures[j].Measure), why?.Describe())),
    ];

    private static CompletedTable Completed(VerificationCounts counts, VerifiedAccuracy accuracy)
    {
        var (positive, negative) = (accuracy.PositivePredictiveValue, accuracy.NegativePredictiveValue);
        var (noPositive, noNegative) = (positive.Reason?.Describe(), negative.Reason?.Describe());
        return new CompletedTable(
            Figure.Of(positive.Value * counts.Positives, noPositive), Figure.Of((1 - positive.Value) * counts.Positives, noPositive),
            Figure.Of((1 - negative.Value) * counts.Negatives, noNegative), Figure.Of(negative.Value * counts.Negatives, noNegative));
    }

    private static BoundedItem FalsePositives(VerificationCounts counts)
    {
        var tests = (double)counts.Positives + counts.Negatives;
        var none = UndefinedReason.NoTrials.Describe();
        double? PerTest(double? number) => tests > 0 ? number / tests : null;
        return new BoundedItem(
            counts.VerifiedPositives == 0
                ? Figure.Undefined(UndefinedReason.NoVerifiedPositives.Describe())
                : Figure.Of(PerTest((double)counts.Refuted / counts.VerifiedPositives * counts.Positives), none),
            Figure.Of(PerTest(counts.Refuted), none), Figure.Of(PerTest(counts.Positives - counts.Confirmed), none));
    }

    private static OneSidedItem OneSided(VerificationCounts counts, double level)
    {
        var limits = OneSidedAccuracy.Lower(StratifiedCounts.Of(counts), level);
        var proof = SpecificityProof.FromPositivity(counts.Positives, counts.Positives + counts.Negatives, level);
        var none = proof.Reason?.Describe();
        return new OneSidedItem(
            level, Figure.Of(limits.Sensitivity), Figure.Of(limits.Specificity), Figure.Of(proof.Specificity, none), Figure.Of(proof.SpecificityLower, none));
    }

    private static ConfirmatoryItem? Confirmed(VerificationCounts counts, (ProbabilityFigure Sensitivity, ProbabilityFigure Specificity)? stated, double level)
    {
        if (stated is not var (sensitivity, specificity)) return null;
        var (se, sp) = (VerificationOptions.Statement(sensitivity), VerificationOptions.Statement(specificity));
        var positive = RoganGladen.PositivePredictiveValue(counts.Confirmed, counts.VerifiedPositives, se, sp, level);
        // Among the negatives the same correction gives the share truly infected; the predictive value is what is left.
        var missed = RoganGladen.PositivePredictiveValue(counts.Missed, counts.VerifiedNegatives, se, sp, level);
        var (noPositive, noNegative) = (positive.Reason?.Describe(), missed.Reason?.Describe());
        return new ConfirmatoryItem(
            Figure.Of(se.Value), Figure.Of(sp.Value),
            new ConfirmedItem(
                Figure.Of(positive.Value, noPositive), Figure.Of(positive.Unclipped, noPositive), Figure.Of(positive.StandardError, noPositive),
                Figure.Of(positive.Lower, noPositive), Figure.Of(positive.Upper, noPositive)),
            new ConfirmedItem(
                Figure.Of(1 - missed.Value, noNegative), Figure.Of(1 - missed.Unclipped, noNegative), Figure.Of(missed.StandardError, noNegative),
                Figure.Of(1 - missed.Upper, noNegative), Figure.Of(1 - missed.Lower, noNegative)));
    }

    private static ImmutableArray<string> Remarks(VerificationCounts counts)
    {
        var remarks = ImmutableArray.CreateBuilder<string>();
        if (counts.Negatives == 0)
        {
            remarks.Add("No negative screen was given: a sensitivity of 1 then follows from the counts alone and says nothing of the screen. State the others with --unverified-negatives.");
        }

        if (counts.VerifiedNegatives == 0)
        {
            remarks.Add("No negative was verified: neither sensitivity nor specificity can be estimated. What remains known are the predictive value of a positive, the bounds, and what the positivity alone proves of the specificity.");
        }
        else if (OneSidedAccuracy.BoundsOnly(counts))
        {
            remarks.Add(counts.Missed == 0
                ? "None of the audited negatives was missed: rely on the bounds and the one-sided limits, not on the estimates."
                : $"Fewer than {OneSidedAccuracy.LeastAudited} negatives were audited: rely on the bounds and the one-sided limits, not on the estimates.");
        }

        if (counts.Positives + counts.Negatives > counts.VerifiedPositives + counts.VerifiedNegatives)
            remarks.Add("Corrected figures hold where the verified were chosen by the screen's result and chance alone; bounds assume nothing.");
        return remarks.ToImmutable();
    }

    private static void Render(AccuracyResult result, Screen screen)
    {
        screen.Title("Accuracy of the screen against the confirmatory test");
        VerifiedTable.Write(screen, result.ScreenPositive, result.ScreenNegative);
        screen.Line();
        (string Name, AccuracyItem Item)[] rows =
        [
            ("sensitivity", result.Sensitivity), ("specificity", result.Specificity), ("prevalence", result.Prevalence),
            ("positive predictive value", result.PositivePredictiveValue), ("negative predictive value", result.NegativePredictiveValue),
        ];
        screen.Table(
            [new("measure"), new("of", false), new("estimate", true), new("lower", true), new("upper", true), new("std. error", true), new("Wald from", true), new("to", true)],
            rows.SelectMany(row => new[]
            {
                new[] { row.Name, "verified only", Short(row.Item.Naive.Estimate), Short(row.Item.Naive.Lower), Short(row.Item.Naive.Upper), Short(row.Item.Naive.StandardError), Short(row.Item.Naive.WaldLower), Short(row.Item.Naive.WaldUpper) },
                ["", "corrected", Short(row.Item.Corrected.Estimate), Short(row.Item.Corrected.Lower), Short(row.Item.Corrected.Upper), Short(row.Item.Corrected.StandardError), Short(row.Item.Corrected.WaldLower), Short(row.Item.Corrected.WaldUpper)],
                ["", "bounds", "", Short(row.Item.Bounds.Lower), Short(row.Item.Bounds.Upper), "", "", ""],
            }));
        screen.Line();
        foreach (var (name, item) in rows)
        {
            if (item.Corrected.Estimate.Reason is { } why) screen.Line($"{name} is undefined: {why}.");
            else if (item.Corrected.StandardError.Reason is { } noError) screen.Line($"{name} has no standard error: {noError}.");
        }

        screen.Line($"False positives per test: {Short(result.FalsePositivesPerTest.Estimate)}, between {Short(result.FalsePositivesPerTest.Lower)} and {Short(result.FalsePositivesPerTest.Upper)}.");
        screen.Line($"With confidence {Show.Confidence(result.OneSided.Confidence)}, one-sided, in these tests: sensitivity at least {Short(result.OneSided.SensitivityAtLeast)}, specificity at least {Short(result.OneSided.SpecificityAtLeast)};");
        screen.Line($"from the positivity alone, for a screen no worse than chance: specificity at least {Short(result.OneSided.SpecificityFromPositivityAtLeast)}.");
        if (result.CorrectedForConfirmatoryTest is { } confirmed)
        {
            screen.Line("Corrected for the confirmatory test's own errors:");
            screen.Line($"  positive predictive value {Short(confirmed.PositivePredictiveValue.Estimate)} ({Short(confirmed.PositivePredictiveValue.Lower)} to {Short(confirmed.PositivePredictiveValue.Upper)}),");
            screen.Line($"  negative predictive value {Short(confirmed.NegativePredictiveValue.Estimate)} ({Short(confirmed.NegativePredictiveValue.Lower)} to {Short(confirmed.NegativePredictiveValue.Upper)}).");
            if (confirmed.PositivePredictiveValue.Estimate.Reason is { } noPositive) screen.Line($"  positive predictive value is undefined: {noPositive}.");
            if (confirmed.NegativePredictiveValue.Estimate.Reason is { } noNegative) screen.Line($"  negative predictive value is undefined: {noNegative}.");
        }

        foreach (var remark in result.Remarks) screen.Text(remark);
        screen.Line();
        screen.Line($"Confidence {Show.Confidence(result.Confidence)}. Verified only: Wilson. Corrected: Begg and Greenes, logit limits. Bounds: no assumption.");
        screen.Line("Runs are taken as independent.");
        screen.Caution();
    }

    private static string Short(Figure figure) => Show.Number(figure);
}
