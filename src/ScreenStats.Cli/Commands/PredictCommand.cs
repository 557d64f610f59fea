using System.CommandLine;
using ScreenStats.Cli.Parsing;
using ScreenStats.Cli.Results;
using ScreenStats.Cli.Terminal;
using ScreenStats.Statistics.Accuracy;

namespace ScreenStats.Cli.Commands;

/// <summary><c>predict</c>: what a positive and a negative result are worth at a prevalence.</summary>
internal sealed class PredictCommand : RunnerCommand
{
    private readonly Option<string> sensitivity;
    private readonly Option<string> specificity;
    private readonly Option<string> prevalence;
    private readonly Option<string> per;
    private readonly Option<string> share;
    private readonly Option<string> repeat;
    private readonly Option<string> rule;
    private readonly Option<string> confirmatorySensitivity;
    private readonly Option<string> confirmatorySpecificity;
    private readonly Option<bool> curve;
    private readonly Option<string> confidence;

    public PredictCommand()
        : base("predict", "Predictive values, likelihood ratios, and what to expect per 10,000",
            "screenstats predict --sensitivity 0.8 --specificity 0.98 --prevalence 0.01",
            "screenstats predict --sensitivity 61/97 --specificity 2391/2400 --prevalence 0.004 --confidence 0.9",
            "screenstats predict --sensitivity 0.73[0.65,0.80] --specificity 0.997 --prevalence 0.01 --repeat 2 --rule any")
    {
        sensitivity = TakeOption("--sensitivity", "share",
            "A fraction (taken as exact), counts such as 61/97, or a value with its 95 % interval such as 0.73[0.65,0.80] (quote it where the shell expands brackets).", required: true);
        specificity = TakeOption("--specificity", "share", "Likewise, such as 2391/2400.", required: true);
        prevalence = TakeOption("--prevalence", "share", "Likewise, from another source.", required: true);
        per = TakeOption("--per", "people", "People tested once that the expected counts are for. Default 10000.");
        share = TakeOption("--share", "fraction", "The share of positives that is to be real: at which prevalence is it reached? Default 0.5.");
        repeat = TakeOption("--repeat", "times", "The same screen taken 2 to 100 times by one person.");
        rule = TakeOption("--rule", "name", "With --repeat: positive where all are (default) or where any is. Write all or any.");
        rule.CompletionSources.Add("all", "any");
        confirmatorySensitivity = TakeOption("--confirmatory-sensitivity", "share", "With the next: each positive is followed by a confirmatory test.");
        confirmatorySpecificity = TakeOption("--confirmatory-specificity", "share", "Specificity of the confirmatory test.");
        curve = TakeSwitch("--curve", "Both predictive values at prevalences from 1 in 10,000 to a half.");
        confidence = TakeOption("--confidence", "fraction", "Confidence of the limits. Default 0.95.");
        TakeJson();
    }

    public override int Run(Invocation invocation)
    {
        var answer = new PredictAnswer(
            Figures.Probability("--sensitivity", invocation.Text(sensitivity)!),
            Figures.Probability("--specificity", invocation.Text(specificity)!),
            Figures.Probability("--prevalence", invocation.Text(prevalence)!),
            Figures.Confidence("--confidence", invocation.Text(confidence) ?? "0.95"))
        {
            Per = Figures.Whole("--per", invocation.Text(per) ?? "10000", 1, 1_000_000_000_000),
            Share = Figures.OpenFraction("--share", invocation.Text(share) ?? "0.5", "0.5"),
            Times = invocation.Text(repeat) is { } times ? (int)Figures.Whole("--repeat", times, 2, 100) : null,
            Rule = Rule(invocation),
            ConfirmatorySensitivity = Optional("--confirmatory-sensitivity", invocation.Text(confirmatorySensitivity)),
            ConfirmatorySpecificity = Optional("--confirmatory-specificity", invocation.Text(confirmatorySpecificity)),
            WithCurve = invocation.Parsed.GetValue(curve),
        };
        if (answer.ConfirmatorySensitivity is null != answer.ConfirmatorySpecificity is null)
            throw new UsageException("--confirmatory-sensitivity and --confirmatory-specificity go together; write both.");

        var result = answer.Result();
        if (WantsJson(invocation)) invocation.Output.Write(ResultJson.Write(result));
        else PredictScreen.Render(answer, result, invocation.Screen);
        return ExitCode.Done;
    }

    private static ProbabilityFigure? Optional(string name, string? text) => text is null ? null : Figures.Probability(name, text);

    private PositiveRule Rule(Invocation invocation)
    {
        var text = invocation.Text(rule);
        if (text is not null && invocation.Text(repeat) is null) throw new UsageException("--rule says how repeated screens count; write --repeat 2 with it.");
        return text switch
        {
            null or "all" => PositiveRule.All,
            "any" => PositiveRule.Any,
            _ => throw new UsageException($"--rule: \"{text}\" is not known; write all or any."),
        };
    }
}
