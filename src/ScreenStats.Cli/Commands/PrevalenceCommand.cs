using System.CommandLine;
using ScreenStats.Cli.Parsing;
using ScreenStats.Cli.Results;
using ScreenStats.Cli.Terminal;
using ScreenStats.Statistics.Prevalence;

namespace ScreenStats.Cli.Commands;

/// <summary><c>prevalence 50/3330</c>: the true prevalence behind an apparent one.</summary>
internal sealed class PrevalenceCommand : RunnerCommand
{
    private readonly Argument<string> counts;
    private readonly Option<string> sensitivity;
    private readonly Option<string> specificity;
    private readonly Option<string> exact;
    private readonly Option<string> priorPrevalence;
    private readonly Option<string> priorSensitivity;
    private readonly Option<string> priorSpecificity;
    private readonly Option<string> confidence;

    public PrevalenceCommand()
        : base("prevalence", "The true prevalence behind an apparent one",
            "screenstats prevalence 50/3330 --sensitivity 103/122 --specificity 399/401",
            "screenstats prevalence 120/8000 --sensitivity 0.7 --specificity 0.995 --json",
            "screenstats prevalence 50/3330 --sensitivity 0.84[0.77,0.90] --specificity 399/401 --prior-prevalence 1,50")
    {
        counts = TakeArgument("counts", "Positive of valid tests, such as 50/3330.");
        sensitivity = TakeOption("--sensitivity", "share",
            "A fraction (taken as exact), counts such as 103/122, or a value with its 95 % interval such as 0.73[0.65,0.80] (quote it where the shell expands brackets).", required: true);
        specificity = TakeOption("--specificity", "share", "Likewise, such as 399/401.", required: true);
        exact = TakeOption("--exact-interval", "name", "The exact interval that is mapped through: clopper-pearson (default) or blaker.");
        exact.CompletionSources.Add("clopper-pearson", "blaker");
        priorPrevalence = TakeOption("--prior-prevalence", "a,b", "Beta distribution of the prevalence before the tests. Default 1,1 (uniform).");
        priorSensitivity = TakeOption("--prior-sensitivity", "a,b", "Beta distribution of the sensitivity before its counts. Default 1,1.");
        priorSpecificity = TakeOption("--prior-specificity", "a,b", "Beta distribution of the specificity before its counts. Default 1,1.");
        confidence = TakeOption("--confidence", "fraction", "Confidence of the limits. Default 0.95.");
        TakeJson();
    }

    public override int Run(Invocation invocation)
    {
        var (successes, trials) = Figures.Counts("<counts>", invocation.Text(counts));
        var answer = new PrevalenceAnswer(
            successes, trials,
            Figures.Probability("--sensitivity", invocation.Text(sensitivity)!),
            Figures.Probability("--specificity", invocation.Text(specificity)!),
            Figures.Confidence("--confidence", invocation.Text(confidence) ?? "0.95"),
            new AccuracyPriors
            {
                Prevalence = Figures.Beta("--prior-prevalence", invocation.Text(priorPrevalence) ?? "1,1"),
                Sensitivity = Figures.Beta("--prior-sensitivity", invocation.Text(priorSensitivity) ?? "1,1"),
                Specificity = Figures.Beta("--prior-specificity", invocation.Text(priorSpecificity) ?? "1,1"),
            },
            Exact(invocation.Text(exact) ?? "clopper-pearson"));
        var result = answer.Result();
        if (WantsJson(invocation)) invocation.Output.Write(ResultJson.Write(result));
        else Render(answer, result, invocation.Screen);
        return ExitCode.Done;
    }

    private static ExactMethod Exact(string name) => name switch
    {
        "clopper-pearson" => ExactMethod.ClopperPearson,
        "blaker" => ExactMethod.Blaker,
        _ => throw new UsageException($"--exact-interval: \"{name}\" is not known; write clopper-pearson or blaker."),
    };

    private static void Render(PrevalenceAnswer answer, PrevalenceResult result, Screen screen)
    {
        screen.Title($"Prevalence behind {Show.Count(result.Successes)} positive of {Show.Count(result.Trials)} tests");
        screen.Line($"sensitivity {answer.Sensitivity.Shown}, specificity {answer.Specificity.Shown}");
        screen.Line();
        screen.Table(
            [new("measure"), new("estimate", true), new("lower", true), new("upper", true), new("method")],
            [
                ["apparent-prevalence", Show.Number(result.Apparent.Estimate), Show.Number(result.Apparent.Lower), Show.Number(result.Apparent.Upper), result.Apparent.Method ?? "wilson"],
                .. result.Corrected.Select(one => new[]
                {
                    "prevalence", Show.Number(one.Estimate), Show.Number(one.Lower), Show.Number(one.Upper), one.Method,
                }),
            ]);
        if (result.Apparent.Estimate.Reason is { } nothing) screen.Line("apparent-prevalence is undefined: " + nothing);
        if (result.Corrected[0].Estimate.Reason is { } why) screen.Line("prevalence is undefined: " + why);
        if (result.Remark is { } remark) screen.Attention(remark);
        foreach (var one in result.Corrected.Where(one => one.Estimate.Value is not null))
        {
            if (one is { Method: RoganGladen.MethodName, Unclipped: { } unclipped } && unclipped is < 0 or > 1)
                screen.Line($"Before it was cut to 0 and 1, the value of rogan-gladen was {Show.Number(one.Unclipped!.Value)}.");
            if (one is { Method: RoganGladen.MethodName, StandardError: { } error, UnclippedLower: { } from, UnclippedUpper: { } to })
                screen.Line($"rogan-gladen: standard error {Show.Number(error)}, Wald limits before they were cut to 0 and 1: {Show.Number(from)} to {Show.Number(to)}.");
            if (one is { Median: { } median, ShortestLower: { } lower, ShortestUpper: { } upper })
                screen.Line($"bayes: mean {Show.Number(one.Estimate)}, median {Show.Number(median)}, shortest interval {Show.Number(lower)} to {Show.Number(upper)}.");
        }

        if (answer.AtAnEnd && result.Corrected[0].Estimate.Value is not null) screen.Line("rogan-gladen: " + PrevalenceAnswer.HalfAdded + ".");
        Posterior(screen, "sensitivity", result.PosteriorSensitivity);
        Posterior(screen, "specificity", result.PosteriorSpecificity);
        screen.Line();
        screen.Line($"Confidence {Show.Confidence(result.Confidence)}. Figures written as fractions are taken as exact; the method exact takes both so.");
        PredictScreen.Matched(screen, result.Matched);
        screen.Line("People are taken as independent and as alike as those in whom the accuracy was measured.");
        screen.Caution();
    }

    private static void Posterior(Screen screen, string name, PosteriorResult? known)
    {
        if (known is { StandardDeviation: > 0 })
            screen.Line($"bayes, {name} after the tests too: mean {Show.Number(known.Mean)}, median {Show.Number(known.Median)}, {Show.Number(known.Lower)} to {Show.Number(known.Upper)}.");
    }
}
