using System.Collections.Immutable;
using System.CommandLine;
using ScreenStats.Cli.Parsing;
using ScreenStats.Cli.Results;
using ScreenStats.Cli.Terminal;
using ScreenStats.Statistics;
using ScreenStats.Statistics.LatentClass;

namespace ScreenStats.Cli.Commands;

/// <summary><c>latent-class</c>: accuracy and prevalence where no test is the truth.</summary>
internal sealed class LatentClassCommand : RunnerCommand
{
    private static readonly string[] TestMeasures = ["first-sensitivity", "first-specificity", "second-sensitivity", "second-specificity"];

    private readonly Option<string> counts;
    private readonly Option<string> second;
    private readonly Option<string> positives;
    private readonly Option<string> prevalence;
    private readonly Option<string>[] priors;
    private readonly Option<string> confidence;

    public LatentClassCommand()
        : base("latent-class", "Accuracy and prevalence where no test is the truth",
            "screenstats latent-class --counts 14,4,9,528 --second-population 887,31,37,367",
            "screenstats latent-class --positives 40/162 --sensitivity-prior 4.44,13.31 --specificity-prior 71.25,3.75")
    {
        counts = TakeOption("--counts", "four", "Two tests on the same people: positive by both, by the first only, by the second only, by neither.");
        second = TakeOption("--second-population", "four", "The same of a second population: maximum likelihood, without priors.");
        positives = TakeOption("--positives", "counts", "One test: positive of all tests, such as 40/162.");
        prevalence = TakeOption("--prevalence-prior", "two", "Beta prior of the prevalence, such as 2,18. Default 1,1.");
        priors =
        [
            TakeOption("--sensitivity-prior", "two", "Beta prior of the (first) test's sensitivity."),
            TakeOption("--specificity-prior", "two", "Beta prior of the (first) test's specificity."),
            TakeOption("--second-sensitivity-prior", "two", "Beta prior of the second test's sensitivity."),
            TakeOption("--second-specificity-prior", "two", "Beta prior of the second test's specificity."),
        ];
        confidence = TakeOption("--confidence", "fraction", "Confidence, or probability between the limits. Default 0.95.");
        TakeJson();
    }

    public override int Run(Invocation invocation)
    {
        var level = Figures.Confidence("--confidence", invocation.Text(confidence) ?? "0.95");
        var result = (invocation.Text(counts), invocation.Text(second), invocation.Text(positives)) switch
        {
            (null, null, { } one) => OneTest(invocation, Figures.Counts("--positives", one), level),
            ({ } four, null, null) => TwoTests(invocation, Four("--counts", four), level),
            ({ } four, { } other, null) => Likelihood(invocation, Four("--counts", four), Four("--second-population", other), level),
            (null, null, null) => throw new UsageException("--counts is missing: write four counts for two tests, or --positives for one test."),
            (null, _, null) => throw new UsageException("--counts is missing: --second-population needs a first one."),
            _ => throw new UsageException("--positives is for one test, --counts for two: write one of them."),
        };

        if (WantsJson(invocation)) invocation.Output.Write(ResultJson.Write(result));
        else Render(result, invocation.Screen);
        return ExitCode.Done;
    }

    private LatentClassResult Likelihood(Invocation invocation, TwoTestCounts one, TwoTestCounts other, double level)
    {
        if (priors.Append(prevalence).FirstOrDefault(option => invocation.Text(option) is not null) is { } prior)
            throw new UsageException($"{prior.Name}: two populations are fitted without priors; leave out the prior or --second-population.");
        var fit = HuiWalter.Fit([one, other], level);
        string[] names = ["prevalence-first-population", "prevalence-second-population", .. TestMeasures];
        var why = fit.Reason?.Describe();
        LatentFigure?[] figures = fit.IsDefined
            ? [.. fit.Prevalences, fit.FirstSensitivity, fit.FirstSpecificity, fit.SecondSensitivity, fit.SecondSpecificity]
            : new LatentFigure?[names.Length];
        List<string> remarks = [];
        if (fit.Fit?.Reason is { } saturated) remarks.Add($"Goodness of fit cannot be tested: {saturated.Describe()}.");
        if (fit.OnBoundary) remarks.Add("The solution lies on the edge of what is possible: no standard errors, and the model may not hold.");
        if (fit.IsDefined) remarks.Add("The mirrored solution, of the same likelihood, with both tests worse than chance, was refused.");
        remarks.Add("Assumed: both tests as good in either population, and independent of each other within infected and within uninfected people. Tests that miss the same infections look better here than they are.");
        return new LatentClassResult(
            HuiWalter.MethodName, [Cells(one), Cells(other)], level,
            [
                .. names.Select((name, i) => new LatentItem(
                    name, Figure.Of(figures[i]?.Value, why), Figure.Of(figures[i]?.Logit?.Lower, why ?? figures[i]?.StandardErrorReason?.Describe()),
                    Figure.Of(figures[i]?.Logit?.Upper, why ?? figures[i]?.StandardErrorReason?.Describe()), figures[i]?.StandardError, null)),
            ],
            fit.Fit is { } goodness
                ? new LatentFitItem(Figure.Of(fit.LogLikelihood, why), goodness.DegreesOfFreedom, Figure.Of(goodness.Deviance, goodness.Reason?.Describe()), Figure.Of(goodness.PValue, goodness.Reason?.Describe()))
                : null,
            fit.IsDefined && !fit.OnBoundary
                ? [.. from i in Enumerable.Range(0, 6) from j in Enumerable.Range(i + 1, 5 - i) select new CovarianceItem(names[i], names[j], Figure.Of(fit.Covariance(i, j), why))]
                : null,
            null, [.. remarks]);
    }

    private LatentClassResult TwoTests(Invocation invocation, TwoTestCounts four, double level)
    {
        var posterior = LatentClassPosterior.TwoTests(four, Prevalence(invocation), Test(invocation, 0), Test(invocation, 2), level);
        return Posterior(posterior, [Cells(four)], ["both-positive", "first-only", "second-only", "both-negative"], level,
            "Assumed: the two tests independent of each other within infected and within uninfected people.");
    }

    private LatentClassResult OneTest(Invocation invocation, CountsFigure one, double level)
    {
        if (priors[2..].FirstOrDefault(option => invocation.Text(option) is not null) is { } prior)
            throw new UsageException($"{prior.Name}: there is no second test with --positives; write --counts for two tests.");
        var posterior = LatentClassPosterior.OneTest(one.Successes, one.Trials, Prevalence(invocation), Test(invocation, 0), level);
        return Posterior(posterior, [[one.Successes, one.Trials - one.Successes]], ["positive", "negative"], level, null);
    }

    private static LatentClassResult Posterior(
        LatentPosterior posterior, ImmutableArray<ImmutableArray<long>> populations, string[] cells, double level, string? assumption)
    {
        var why = posterior.Reason?.Describe();
        PosteriorSummary?[] figures = posterior.IsDefined
            ? [posterior.Prevalence, .. posterior.Tests.SelectMany(test => new PosteriorSummary?[] { test.Sensitivity, test.Specificity })]
            : new PosteriorSummary?[cells.Length == 2 ? 3 : 5];
        string[] names = ["prevalence", .. TestMeasures[..(figures.Length - 1)]];
        List<string> remarks = ["The counts alone cannot tell these figures apart: what the priors say stays visible however many people are tested."];
        if (assumption is not null) remarks.Add(assumption);
        return new LatentClassResult(
            LatentClassPosterior.MethodName, populations, level, [.. names.Select((name, i) => Item(name, figures[i], why))], null, null,
            posterior.IsDefined ? [.. cells.Select((name, i) => Item(name, posterior.InfectedByCell[i], why))] : null, [.. remarks]);
    }

    private static LatentItem Item(string name, PosteriorSummary? summary, string? why) =>
        new(name, Figure.Of(summary?.Median, why), Figure.Of(summary?.Lower, why), Figure.Of(summary?.Upper, why), null, summary?.Mean);

    private BetaPrior Prevalence(Invocation invocation) => invocation.Text(prevalence) is { } text ? Prior("--prevalence-prior", text) : BetaPrior.Uniform;

    private TestPriors Test(Invocation invocation, int at) => new(Required(invocation, priors[at]), Required(invocation, priors[at + 1]));

    private static BetaPrior Required(Invocation invocation, Option<string> option) => invocation.Text(option) is { } text
        ? Prior(option.Name, text)
        : throw new UsageException($"{option.Name} is missing: in one population the counts cannot answer without priors; write two parameters such as 4.44,13.31.");

    private static BetaPrior Prior(string name, string text)
    {
        var parameters = Figures.List(name, text);
        return parameters is [> 0 and <= 1e6, > 0 and <= 1e6]
            ? new BetaPrior(parameters[0], parameters[1])
            : throw new UsageException($"{name}: \"{text}\" is no beta prior; write its two parameters, each above 0 and at most 1000000, such as 4.44,13.31.");
    }

    private static TwoTestCounts Four(string name, string text)
    {
        var parts = text.Split(',');
        if (parts.Length != 4)
            throw new UsageException($"{name}: \"{text}\" is not four counts; write positive by both, by the first only, by the second only, by neither, such as 14,4,9,528.");
        var whole = parts.Select(part => Figures.Whole(name, part, 0, 1_000_000_000_000)).ToArray();
        return new TwoTestCounts(whole[0], whole[1], whole[2], whole[3]);
    }

    private static ImmutableArray<long> Cells(TwoTestCounts four) => [four.BothPositive, four.FirstOnly, four.SecondOnly, four.BothNegative];

    private static void Render(LatentClassResult result, Screen screen)
    {
        var posterior = result.Method == LatentClassPosterior.MethodName;
        screen.Title(posterior ? "Prevalence and accuracy from beta priors, no test taken as the truth" : "Two tests in two populations, none taken as the truth");
        foreach (var population in result.Populations)
            screen.Line((population.Length == 2 ? "positive, negative: " : "both positive, first only, second only, both negative: ") + string.Join(", ", population.Select(Show.Count)));
        screen.Line();
        Table(result.Figures, posterior, screen);
        foreach (var why in result.Figures.Select(figure => figure.Estimate.Reason ?? figure.Lower.Reason).Where(reason => reason is not null).Distinct()) screen.Line($"undefined: {why}");
        if (result.InfectedByCell is { } cells)
        {
            screen.Line();
            screen.Line("Truly infected by result:");
            Table(cells, posterior, screen);
        }

        screen.Line();
        foreach (var remark in result.Remarks) screen.Text(remark);
        screen.Line(posterior
            ? $"Probability between the limits {Show.Confidence(result.Confidence)}, equal tails; exact sum over all divisions into infected and uninfected."
            : $"Confidence {Show.Confidence(result.Confidence)}, logit limits from Fisher's information.");
        screen.Caution();
    }

    private static void Table(IEnumerable<LatentItem> items, bool posterior, Screen screen) => screen.Table(
        [new("measure"), new(posterior ? "median" : "estimate", true), new("lower", true), new("upper", true), new(posterior ? "mean" : "std. error", true)],
        items.Select(item => new[]
        {
            item.Measure, Show.Number(item.Estimate), Show.Number(item.Lower), Show.Number(item.Upper),
            (posterior ? item.Mean : item.StandardError) is { } value ? Show.Number(value) : "undefined",
        }));
}
