using System.CommandLine;
using ScreenStats.Cli.Parsing;
using ScreenStats.Cli.Results;
using ScreenStats.Cli.Terminal;
using ScreenStats.Statistics;
using ScreenStats.Statistics.Prevalence;
using ScreenStats.Statistics.Proportions;

namespace ScreenStats.Cli.Commands;

/// <summary><c>prevalence 50/3330</c>: the true prevalence behind an apparent one.</summary>
internal sealed class PrevalenceCommand : RunnerCommand
{
    private const string BelowRemark =
        "There are fewer positives than the stated specificity alone would give: the stated specificity is not compatible with these data, or only by chance.";

    private const string AboveRemark =
        "There are more positives than the stated sensitivity can give: the stated accuracy is not compatible with these data.";

    private readonly Argument<string> counts;
    private readonly Option<string> sensitivity;
    private readonly Option<string> specificity;
    private readonly Option<string> confidence;

    public PrevalenceCommand()
        : base("prevalence", "The true prevalence behind an apparent one",
            "screenstats prevalence 50/3330 --sensitivity 103/122 --specificity 399/401",
            "screenstats prevalence 120/8000 --sensitivity 0.7 --specificity 0.995 --json")
    {
        counts = TakeArgument("counts", "Positive of valid tests, such as 50/3330.");
        sensitivity = TakeOption("--sensitivity", "share", "A fraction, or counts such as 103/122.", required: true);
        specificity = TakeOption("--specificity", "share", "A fraction, or counts such as 399/401.", required: true);
        confidence = TakeOption("--confidence", "fraction", "Confidence of the limits. Default 0.95.");
        TakeJson();
    }

    public override int Run(Invocation invocation)
    {
        var (successes, trials) = Figures.Counts("<counts>", invocation.Text(counts));
        var se = Figures.Probability("--sensitivity", invocation.Text(sensitivity)!);
        var sp = Figures.Probability("--specificity", invocation.Text(specificity)!);
        var level = Figures.Confidence("--confidence", invocation.Text(confidence) ?? "0.95");

        var apparent = ProportionInterval.Wilson(successes, trials, level);
        var corrected = se.Statement is { } first && sp.Statement is { } second
            ? RoganGladen.Estimate(successes, trials, first, second, level)
            : null;
        var noTrials = UndefinedReason.NoTrials.Describe();
        var why = corrected is null ? noTrials : corrected.Reason?.Describe();
        var result = new PrevalenceResult(
            successes, trials, Figure.Of(se.Value, noTrials), Figure.Of(sp.Value, noTrials), level,
            Figure.Of(apparent.Estimate, noTrials),
            Figure.Of(corrected?.Value, why), Figure.Of(corrected?.Unclipped, why), Figure.Of(corrected?.StandardError, why),
            [
                new("apparent-prevalence", IntervalMethod.Wilson.Name(), Figure.Of(apparent.Lower, noTrials), Figure.Of(apparent.Upper, noTrials)),
                new("prevalence", RoganGladen.MethodName, Figure.Of(corrected?.Lower, why), Figure.Of(corrected?.Upper, why)),
            ],
            corrected switch
            {
                { ApparentBelowFalsePositiveRate: true } => BelowRemark,
                { ApparentAboveSensitivity: true } => AboveRemark,
                _ => null,
            });

        if (WantsJson(invocation)) invocation.Output.Write(ResultJson.Write(result));
        else Render(result, se, sp, invocation.Screen);
        return ExitCode.Done;
    }

    private static void Render(PrevalenceResult result, ProbabilityFigure se, ProbabilityFigure sp, Screen screen)
    {
        screen.Title($"Prevalence behind {Show.Count(result.Successes)} positive of {Show.Count(result.Trials)} tests");
        screen.Line($"sensitivity {se.Shown}, specificity {sp.Shown}");
        screen.Line();
        screen.Table(
            [new("measure"), new("estimate", true), new("lower", true), new("upper", true), new("method")],
            result.Intervals.Select(one => new[]
            {
                one.Measure ?? "",
                Show.Number(one.Measure == "prevalence" ? result.Prevalence : result.ApparentPrevalence),
                Show.Number(one.Lower), Show.Number(one.Upper), one.Method,
            }));
        if (result.ApparentPrevalence.Reason is { } nothing) screen.Line("apparent-prevalence is undefined: " + nothing);
        if (result.Prevalence.Reason is { } why) screen.Line("prevalence is undefined: " + why);
        if (result.Remark is { } remark) screen.Attention(remark);
        screen.Line();
        screen.Line($"Confidence {Show.Confidence(result.Confidence)}. Figures written as fractions are taken as exact.");
        screen.Line("People are taken as independent and as alike as those in whom the accuracy was measured.");
        screen.Caution();
    }
}
