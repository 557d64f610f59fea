using System.Collections.Immutable;
using System.CommandLine;
using ScreenStats.Cli.Parsing;
using ScreenStats.Cli.Results;
using ScreenStats.Cli.Terminal;
using ScreenStats.Statistics;
using ScreenStats.Statistics.Proportions;

namespace ScreenStats.Cli.Commands;

/// <summary><c>interval 81/263</c>: intervals of one proportion.</summary>
internal sealed class IntervalCommand : RunnerCommand
{
    private readonly Argument<string> counts;
    private readonly Option<string> method;
    private readonly Option<string> confidence;

    public IntervalCommand()
        : base("interval", "Intervals of one proportion", "screenstats interval 81/263", "screenstats interval 0/20 --method all --confidence 0.9")
    {
        counts = TakeArgument("counts", "Successes of trials, such as 81/263.");
        method = TakeOption("--method", "name", string.Join(", ", IntervalMethods.All.Select(one => one.Name())) + ", or all. Default wilson.");
        confidence = TakeOption("--confidence", "fraction", "Confidence of the interval. Default 0.95.");
        TakeJson();
    }

    public override int Run(Invocation invocation)
    {
        var (successes, trials) = Figures.Counts("<counts>", invocation.Text(counts));
        var methods = Methods(invocation.Text(method) ?? "wilson");
        var level = Figures.Confidence("--confidence", invocation.Text(confidence) ?? "0.95");

        var estimates = methods.Select(one => ProportionInterval.Of(one, successes, trials, level)).ToImmutableArray();
        var undefined = UndefinedReason.NoTrials.Describe();
        var result = new IntervalResult(
            successes, trials, level, Figure.Of(estimates[0].Estimate, undefined),
            [.. estimates.Select(one => new IntervalItem(
                null, one.Method.Name(), Figure.Of(one.Lower, undefined), Figure.Of(one.Upper, undefined)))]);

        if (WantsJson(invocation)) invocation.Output.Write(ResultJson.Write(result));
        else Render(result, invocation.Screen);
        return ExitCode.Done;
    }

    private static ImmutableArray<IntervalMethod> Methods(string name)
    {
        if (name == "all") return [.. IntervalMethods.All];
        if (IntervalMethods.TryParse(name, out var found)) return [found];
        throw new UsageException(
            $"--method: \"{name}\" is not known; write one of {string.Join(", ", IntervalMethods.All.Select(one => one.Name()))}, or all.");
    }

    private static void Render(IntervalResult result, Screen screen)
    {
        screen.Title($"{Show.Count(result.Successes)} of {Show.Count(result.Trials)}: {Show.Number(result.Estimate)}");
        if (result.Estimate.Reason is { } reason) screen.Line("undefined: " + reason);
        screen.Line();
        screen.Table(
            [new("method"), new("lower", true), new("upper", true)],
            result.Intervals.Select(one => new[] { one.Method, Show.Number(one.Lower), Show.Number(one.Upper) }));
        screen.Line();
        screen.Line($"Confidence {Show.Confidence(result.Confidence)}, two-sided. The trials are taken as independent.");
        screen.Caution();
    }
}
