using System.Collections.Immutable;
using System.CommandLine;
using ScreenStats.Cli.Parsing;
using ScreenStats.Cli.Results;
using ScreenStats.Cli.Terminal;
using ScreenStats.Statistics;
using ScreenStats.Statistics.Accuracy;

namespace ScreenStats.Cli.Commands;

/// <summary><c>predict</c>: what a positive and a negative result are worth at a prevalence.</summary>
internal sealed class PredictCommand : RunnerCommand
{
    private readonly Option<string> sensitivity;
    private readonly Option<string> specificity;
    private readonly Option<string> prevalence;
    private readonly Option<string> confidence;

    public PredictCommand()
        : base("predict", "Predictive values, likelihood ratios, and what to expect per 10,000",
            "screenstats predict --sensitivity 0.8 --specificity 0.98 --prevalence 0.01",
            "screenstats predict --sensitivity 61/97 --specificity 2391/2400 --prevalence 0.004 --confidence 0.9")
    {
        sensitivity = TakeOption("--sensitivity", "share", "A fraction, or counts such as 61/97.", required: true);
        specificity = TakeOption("--specificity", "share", "A fraction, or counts such as 2391/2400.", required: true);
        prevalence = TakeOption("--prevalence", "share", "A fraction, or counts from another source.", required: true);
        confidence = TakeOption("--confidence", "fraction", "Confidence of the limits. Default 0.95.");
        TakeJson();
    }

    public override int Run(Invocation invocation)
    {
        var se = Figures.Probability("--sensitivity", invocation.Text(sensitivity)!);
        var sp = Figures.Probability("--specificity", invocation.Text(specificity)!);
        var prior = Figures.Probability("--prevalence", invocation.Text(prevalence)!);
        var level = Figures.Confidence("--confidence", invocation.Text(confidence) ?? "0.95");

        var positive = PredictiveEstimate(se, sp, prior, level, PredictiveValue.Positive);
        var negative = PredictiveEstimate(se, sp, prior, level, PredictiveValue.Negative);
        var positiveRatio = Ratio(se, sp, level, LikelihoodRatio.Positive, LikelihoodRatio.Positive);
        var negativeRatio = Ratio(se, sp, level, LikelihoodRatio.Negative, LikelihoodRatio.Negative);
        var result = new PredictResult(
            Of(se), Of(sp), Of(prior), level, Of(positive), Of(negative), Of(positiveRatio), Of(negativeRatio),
            [
                .. Intervals("positive-predictive-value", positive), .. Intervals("negative-predictive-value", negative),
                .. Intervals("positive-likelihood-ratio", positiveRatio), .. Intervals("negative-likelihood-ratio", negativeRatio),
            ],
            PerTenThousand(se.Value, sp.Value, prior.Value));

        if (WantsJson(invocation)) invocation.Output.Write(ResultJson.Write(result));
        else Render(result, (se, sp, prior), invocation.Screen);
        return ExitCode.Done;
    }

    private static Estimate PredictiveEstimate(ProbabilityFigure se, ProbabilityFigure sp, ProbabilityFigure prior, double level,
        Func<AccuracyStatement, AccuracyStatement, AccuracyStatement, double, Estimate> predict) =>
        se.Statement is { } first && sp.Statement is { } second && prior.Statement is { } third
            ? predict(first, second, third, level)
            : Estimate.Undefined(UndefinedReason.NoTrials);

    private static Estimate Ratio(ProbabilityFigure se, ProbabilityFigure sp, double level,
        Func<DiagnosticCounts, double, Estimate> ofCounts, Func<double, double, Estimate> ofValues)
    {
        if (se.Value is not { } first || sp.Value is not { } second) return Estimate.Undefined(UndefinedReason.NoTrials);
        return se.Counts is { } with && sp.Counts is { } without
            ? ofCounts(new DiagnosticCounts(
                with.Successes, with.Trials - with.Successes, without.Trials - without.Successes, without.Successes), level)
            : ofValues(first, second);
    }

    private static Figure Of(ProbabilityFigure figure) => Figure.Of(figure.Value, UndefinedReason.NoTrials.Describe());

    private static Figure Of(Estimate estimate) => Figure.Of(estimate.Value, estimate.Reason?.Describe());

    private static ImmutableArray<IntervalItem> Intervals(string measure, Estimate estimate) =>
        estimate is { Interval: { } interval, Method: { } method } && method != PredictiveValue.ExactInputsMethod
            ? [new(measure, method, Figure.Of(interval.Lower), Figure.Of(interval.Upper))]
            : [];

    private static PerTenThousand PerTenThousand(double? se, double? sp, double? prior)
    {
        const double people = 10_000;
        var reason = UndefinedReason.NoTrials.Describe();
        return new(
            Figure.Of(people * prior * se, reason),
            Figure.Of(people * prior * (1 - se), reason),
            Figure.Of(people * (1 - prior) * (1 - sp), reason),
            Figure.Of(people * (1 - prior) * sp, reason));
    }

    private static void Render(PredictResult result, (ProbabilityFigure Se, ProbabilityFigure Sp, ProbabilityFigure Prior) stated, Screen screen)
    {
        screen.Title("What a result is worth");
        screen.Line($"sensitivity {stated.Se.Shown}, specificity {stated.Sp.Shown}, prevalence {stated.Prior.Shown}");
        screen.Line();
        screen.Table(
            [new("measure"), new("estimate", true), new("lower", true), new("upper", true), new("method")],
            [
                Row(result, "positive-predictive-value", result.PositivePredictiveValue),
                Row(result, "negative-predictive-value", result.NegativePredictiveValue),
                Row(result, "positive-likelihood-ratio", result.PositiveLikelihoodRatio),
                Row(result, "negative-likelihood-ratio", result.NegativeLikelihoodRatio),
            ]);
        foreach (var reason in new[]
        {
            ("positive-predictive-value", result.PositivePredictiveValue), ("negative-predictive-value", result.NegativePredictiveValue),
            ("positive-likelihood-ratio", result.PositiveLikelihoodRatio), ("negative-likelihood-ratio", result.NegativeLikelihoodRatio),
        })
        {
            if (reason.Item2.Reason is { } why) screen.Line($"{reason.Item1} is undefined: {why}");
        }

        screen.Line();
        screen.Line("Per 10,000 people tested once:");
        screen.Table(
            [new(""), new("with the condition", true), new("without it", true)],
            [
                ["positive", People(result.Per10000.TruePositive), People(result.Per10000.FalsePositive)],
                ["negative", People(result.Per10000.FalseNegative), People(result.Per10000.TrueNegative)],
            ]);
        screen.Line();
        screen.Line(result.Intervals.IsEmpty
            ? "No limits: every figure was taken as exact. Write counts such as 61/97 to carry their uncertainty."
            : $"Confidence {Show.Confidence(result.Confidence)}. Figures written as fractions are taken as exact.");
        screen.Caution();
    }

    private static string[] Row(PredictResult result, string measure, Figure estimate)
    {
        var interval = result.Intervals.FirstOrDefault(one => one.Measure == measure);
        return
        [
            measure, Show.Number(estimate), interval is null ? "" : Show.Number(interval.Lower), interval is null ? "" : Show.Number(interval.Upper),
            interval?.Method ?? (estimate.Value is null ? "" : PredictiveValue.ExactInputsMethod),
        ];
    }

    private static string People(Figure figure) => Show.Rounded(figure, "#,0.0");
}
