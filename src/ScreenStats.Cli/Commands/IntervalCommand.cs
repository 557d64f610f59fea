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
    private readonly Option<string> oneSided;
    private readonly Option<string> designEffect;

    public IntervalCommand()
        : base("interval", "Intervals of one proportion", "screenstats interval 81/263", "screenstats interval 0/20 --method all --confidence 0.9",
            "screenstats interval 12/4000 --one-sided upper --design-effect 1.8")
    {
        counts = TakeArgument("counts", "Successes of trials, such as 81/263.");
        method = TakeOption("--method", "name", string.Join(", ", IntervalMethods.Names) + ", or all. Default wilson.");
        method.CompletionSources.Add([.. IntervalMethods.Names, "all"]);
        confidence = TakeOption("--confidence", "fraction", "Confidence of the interval. Default 0.95.");
        oneSided = TakeOption("--one-sided", "lower|upper", "One limit that holds the whole confidence; the other end is 0 or 1.");
        oneSided.CompletionSources.Add("lower", "upper");
        designEffect = TakeOption("--design-effect", "number", "How many times repeated or clustered tests raise the variance, 1 or more. Default 1.");
        TakeJson();
    }

    public override int Run(Invocation invocation)
    {
        var (successes, trials) = Figures.Counts("<counts>", invocation.Text(counts));
        var methods = Methods(invocation.Text(method) ?? "wilson");
        var level = Figures.Confidence("--confidence", invocation.Text(confidence) ?? "0.95");

        var side = Side(invocation.Text(oneSided));
        if (side != IntervalSide.Both && level <= 0.5) throw new UsageException("--confidence must lie above 0.5 for one limit: write a fraction such as 0.95.");
        var effect = invocation.Text(designEffect) is { } written ? Figures.Finite("--design-effect", written) : (double?)null;
        if (effect < 1) throw new UsageException("--design-effect must be 1 or more: 1 stands for independent tests.");

        var divisor = effect ?? 1;
        var undefined = UndefinedReason.NoTrials.Describe();
        var result = new IntervalResult(
            successes, trials, level, side == IntervalSide.Both ? null : invocation.Text(oneSided), effect, effect is null ? null : trials / divisor,
            Figure.Of(trials == 0 ? null : (double)successes / trials, undefined),
            [.. methods.Select(one =>
            {
                var interval = ProportionInterval.Of(one, successes / divisor, trials / divisor, level, side);
                return new IntervalItem(null, one.Name(), Figure.Of(interval.Lower, undefined), Figure.Of(interval.Upper, undefined), interval.Note?.Describe());
            })]);

        if (WantsJson(invocation)) invocation.Output.Write(ResultJson.Write(result));
        else Render(result, side, invocation.Screen);
        return ExitCode.Done;
    }

    private static IntervalSide Side(string? text) => text switch
    {
        null => IntervalSide.Both,
        "lower" => IntervalSide.Lower,
        "upper" => IntervalSide.Upper,
        _ => throw new UsageException($"--one-sided: \"{text}\" is not known; write lower or upper."),
    };

    private static ImmutableArray<IntervalMethod> Methods(string name)
    {
        if (name == "all") return [.. IntervalMethods.All];
        if (IntervalMethods.TryParse(name, out var found)) return [found];
        throw new UsageException(
            $"--method: \"{name}\" is not known; write one of {string.Join(", ", IntervalMethods.Names)}, or all.");
    }

    private static void Render(IntervalResult result, IntervalSide side, Screen screen)
    {
        screen.Title($"{Show.Count(result.Successes)} of {Show.Count(result.Trials)}: {Show.Number(result.Estimate)}");
        if (result.Estimate.Reason is { } reason) screen.Line("undefined: " + reason);
        screen.Line();
        screen.Table(
            [new("method"), new("lower", true), new("upper", true)],
            result.Intervals.Select(one => new[] { one.Method, Show.Number(one.Lower), Show.Number(one.Upper) }));
        screen.Line();
        foreach (var one in result.Intervals)
        {
            if (one.Note is { } note) screen.Line($"{one.Method}: {note}.");
        }

        var held = side switch { IntervalSide.Both => "two-sided", IntervalSide.Lower => "held by the lower limit alone", _ => "held by the upper limit alone" };
        screen.Line($"Confidence {Show.Confidence(result.Confidence)}, {held}. " + (result.DesignEffect is { } effect
            ? $"Design effect {Show.Number(effect)}: as {Show.Number(result.EffectiveTrials ?? 0)} independent trials."
            : "The trials are taken as independent."));
        screen.Caution();
    }
}
