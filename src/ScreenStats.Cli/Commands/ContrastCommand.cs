using System.Collections.Immutable;
using System.CommandLine;
using ScreenStats.Cli.Parsing;
using ScreenStats.Cli.Results;
using ScreenStats.Cli.Terminal;
using ScreenStats.Statistics;
using ScreenStats.Statistics.Comparison;

namespace ScreenStats.Cli.Commands;

/// <summary><c>contrast 56/70 48/80</c>: difference, ratio and odds ratio of two proportions.</summary>
internal sealed class ContrastCommand : RunnerCommand
{
    private readonly Argument<string?> first;
    private readonly Argument<string?> second;
    private readonly Option<string> measure;
    private readonly Option<string> paired;
    private readonly Option<string> confidence;

    public ContrastCommand()
        : base("contrast", "Difference, ratio and odds ratio of two proportions",
            "screenstats contrast 56/70 48/80",
            "screenstats contrast --paired 59,6,16,80 --measure difference --json")
    {
        first = TakeOptionalArgument("first", "Successes of trials in the first group, such as 56/70.");
        second = TakeOptionalArgument("second", "Successes of trials in the second group, such as 48/80.");
        measure = TakeOption("--measure", "name", string.Join(", ", ContrastMethods.Measures.Select(one => one.Name())) + ". Default all.");
        measure.CompletionSources.Add([.. ContrastMethods.Measures.Select(one => one.Name())]);
        paired = TakeOption("--paired", "a,b,c,d",
            "Two readings of the same people, in place of two groups: positive in both, in the first only, in the second only, in neither.");
        confidence = TakeOption("--confidence", "fraction", "Confidence of the limits. Default 0.95.");
        TakeJson();
    }

    public override int Run(Invocation invocation)
    {
        var level = Figures.Confidence("--confidence", invocation.Text(confidence) ?? "0.95");
        var measures = Measures(invocation.Text(measure));
        var (one, other) = (invocation.OptionalText(first), invocation.OptionalText(second));
        if (invocation.Text(paired) is { } pairs)
        {
            if (one is not null) throw new UsageException("--paired takes the place of <first> and <second>; give either the pairs or the two groups.");
            PairedContrast.Run(invocation, PairedContrast.Counts("--paired", pairs), measures, level, WantsJson(invocation));
            return ExitCode.Done;
        }

        var (x1, n1) = Figures.Counts("<first>", one ?? throw new UsageException("<first> is missing."));
        var (x2, n2) = Figures.Counts("<second>", other ?? throw new UsageException("<second> is missing."));
        if (n1 > long.MaxValue - n2) throw new UsageException("<second>: both groups together are larger than this program can hold.");
        var counts = new TwoProportions(x1, n1, x2, n2);
        var estimates = measures.SelectMany(what => ContrastMethods.Of(what).Select(method => Of(what, method, counts, level))).ToImmutableArray();
        var noTrials = UndefinedReason.NoTrials.Describe();
        Figure P(Func<long, long, long, long, double> test) => n1 == 0 || n2 == 0 ? Figure.Undefined(noTrials) : Figure.Of(test(x1, n1, x2, n2));
        var result = new ContrastResult(
            Figure.Of(counts.First, noTrials), Figure.Of(counts.Second, noTrials),
            ContrastItems.Of(estimates, ContrastMeasure.Difference), ContrastItems.Of(estimates, ContrastMeasure.Ratio), ContrastItems.OddsRatio(estimates),
            P(FisherExact.TwoSided), P(FisherExact.TwoSidedMidP), P(FisherExact.Greater), P(FisherExact.Less),
            new CountsItem(x1, n1), new CountsItem(x2, n2), level);

        if (WantsJson(invocation)) invocation.Output.Write(ResultJson.Write(result));
        else Render(result, estimates, invocation.Screen);
        return ExitCode.Done;
    }

    private static IReadOnlyList<ContrastMeasure> Measures(string? name)
    {
        if (name is null) return ContrastMethods.Measures;
        var found = ContrastMethods.Measures.Where(one => string.Equals(one.Name(), name, StringComparison.Ordinal)).ToImmutableArray();
        return found.IsEmpty
            ? throw new UsageException($"--measure: \"{name}\" is not known; write one of {string.Join(", ", ContrastMethods.Measures.Select(one => one.Name()))}.")
            : found;
    }

    private static ContrastEstimate Of(ContrastMeasure measure, ContrastMethod method, TwoProportions counts, double level) => measure switch
    {
        ContrastMeasure.Difference => ProportionDifference.Of(method, counts, level),
        ContrastMeasure.Ratio => ProportionRatio.Of(method, counts, level),
        _ => OddsRatio.Of(method, counts, level),
    };

    private static void Render(ContrastResult result, ImmutableArray<ContrastEstimate> estimates, Screen screen)
    {
        screen.Title(
            $"{Show.Count(result.FirstCounts.Successes)} of {Show.Count(result.FirstCounts.Trials)} ({Show.Number(result.First)}) against "
            + $"{Show.Count(result.SecondCounts.Successes)} of {Show.Count(result.SecondCounts.Trials)} ({Show.Number(result.Second)})");
        ContrastItems.Table(estimates, screen);
        if (result.FisherPValue.Value is not null)
        {
            screen.Line($"Fisher's exact test: {Show.PValue(result.FisherPValue)} two-sided ({Show.PValue(result.FisherMidPValue)} as mid-P);");
            screen.Line("the mid-P takes off half the chance of every table as likely as the observed one, itself among them;");
            screen.Line($"one-sided {Show.PValue(result.FisherGreaterPValue)} if the first is expected greater, {Show.PValue(result.FisherLessPValue)} if smaller.");
        }

        screen.Line($"Confidence {Show.Confidence(result.Confidence)}, two-sided. First minus second, first over second. Each person counts once and the");
        screen.Line("groups are different people: repeated tests of the same people need wider limits, and the same people in both need --paired.");
        screen.Caution();
    }
}
