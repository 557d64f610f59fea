using System.Collections.Immutable;
using System.CommandLine;
using ScreenStats.Cli.Parsing;
using ScreenStats.Cli.Results;
using ScreenStats.Cli.Terminal;
using ScreenStats.Statistics;
using ScreenStats.Statistics.Clusters;
using ScreenStats.Statistics.Proportions;

namespace ScreenStats.Cli.Commands;

/// <summary><c>clusters</c>: a proportion whose trials come in clusters, and two such groups compared.</summary>
internal sealed class ClustersCommand : RunnerCommand
{
    private readonly Argument<string> counts;
    private readonly Option<string> against;
    private readonly Option<string> confidence;

    public ClustersCommand()
        : base(
            "clusters",
            "A proportion counted in clusters (people, sites): design effect, intervals, two groups compared",
            "screenstats clusters 13/13,12/12,9/9,8/9,11/13,4/5,5/7,7/10",
            "screenstats clusters 0/40,3/38,1/44,0/39,2/41 --against 4/40,9/42,1/37,6/45")
    {
        counts = TakeArgument("counts", "Successes and trials of each cluster, separated by commas, such as 13/13,12/12,4/5.");
        against = TakeOption("--against", "counts", "The clusters of a second group: both are tested for one proportion.");
        confidence = TakeOption("--confidence", "fraction", "Confidence of the intervals. Default 0.95.");
        TakeJson();
    }

    public override int Run(Invocation invocation)
    {
        var first = Clusters("<counts>", invocation.Text(counts));
        var second = invocation.Text(against) is { } written ? Clusters("--against", written) : default(ImmutableArray<(long, long)>?);
        var level = Figures.Confidence("--confidence", invocation.Text(confidence) ?? "0.95");
        var result = new ClustersResult(
            level, Group(first, level), second is { } some ? Group(some, level) : null,
            second is { } others
                ? [
                    Test("rao-scott", RaoScott.OwnDesignEffects(first, others)), Test("rao-scott-pooled", RaoScott.PooledDesignEffect(first, others)),
                    Test("donner", RaoScott.Donner(first, others)), Test("independent", RaoScott.Naive(first, others)),
                ]
                : null);
        if (WantsJson(invocation)) invocation.Output.Write(ResultJson.Write(result));
        else Render(result, invocation.Screen);
        return ExitCode.Done;
    }

    private static ImmutableArray<(long Trials, long Events)> Clusters(string name, string text) =>
        [.. Figures.Clusters(name, text).Select(cluster => (cluster.Trials, cluster.Successes))];

    private static ClusterGroup Group(ImmutableArray<(long Trials, long Events)> clusters, double level)
    {
        var sums = ClusterSums.From(clusters);
        var effect = DesignEffect.Of(sums);
        var why = effect.Reason?.Describe();
        var correlation = IntraclassCorrelation.AnalysisOfVariance(clusters);
        var wilson = ClusteredInterval.Effective(IntervalMethod.Wilson, sums, level);
        var widened = effect.Raw is null // nothing is known to widen by, as in the evaluation
            ? WidenedInterval.Wilson(sums.Events, sums.Trials, 1, 0, level)
            : WidenedInterval.Wilson(sums.Events, sums.Trials, effect, level);
        var exact = KornGraubardInterval.Of(sums, level);
        var none = UndefinedReason.NoTrials.Describe();
        var few = FewClusters(widened);
        return new ClusterGroup(
            sums.Clusters, sums.Events, sums.Trials, Figure.Of(exact.Estimate, none),
            Figure.Of(effect.Variance, why), Figure.Of(effect.Variance is { } v ? Math.Sqrt(v) : null, why), Figure.Of(effect.Raw, why),
            Figure.Of(effect.Raw is null ? null : sums.Trials / effect.Value, why), Figure.Of(correlation.Value, correlation.Reason?.Describe()),
            [
                new IntervalItem(null, "wilson-effective", Figure.Of(wilson.Lower, none), Figure.Of(wilson.Upper, none)),
                new IntervalItem(null, WidenedInterval.MethodName, Figure.Of(widened.Lower, none), Figure.Of(widened.Upper, none), few),
                new IntervalItem(null, KornGraubardInterval.MethodName, Figure.Of(exact.Lower, none), Figure.Of(exact.Upper, none), few),
            ]);
    }

    /// <summary>Says that the limits stand on the differences of a handful of clusters; null from <see cref="WidenedInterval.FewestGroups"/> on, or where nothing was widened.</summary>
    private static string? FewClusters(WidenedEstimate widened) =>
        widened is { DegreesOfFreedom: { } degrees, Clusters: < WidenedInterval.FewestGroups }
            ? $"{Show.Count(widened.Clusters)} clusters hardly show how clusters differ: these limits use Student's quantile on {Show.Count(degrees)} degree{(degrees == 1 ? "" : "s")} of freedom, {Show.Number(widened.Quantile)}, and may be far too wide or too narrow; "
                + $"the evaluation widens limits by sites only where there are {Show.Count(WidenedInterval.FewestGroups)} or more"
            : null;

    private static ClusterTest Test(string name, ClusteredTest test) =>
        new(name, Figure.Of(test.ChiSquare, test.Reason?.Describe()), Figure.Of(test.PValue, test.Reason?.Describe()));

    private static void Render(ClustersResult result, Screen screen)
    {
        Render(result.Group, screen);
        if (result.Against is { } other)
        {
            screen.Line();
            Render(other, screen);
            screen.Line();
            screen.Line("The same proportion in both groups:");
            screen.Table(
                [new("test"), new("chi-square", true), new("p-value", true)],
                (result.Tests ?? []).Select(test => new[] { test.Method, Show.Number(test.ChiSquare), Show.Number(test.PValue) }));
            foreach (var test in result.Tests ?? [])
            {
                if (test.PValue.Reason is { } reason) screen.Line($"{test.Method} is undefined: {reason}");
            }

            screen.Line("independent ignores the clusters: for comparison, not for use.");
        }

        screen.Line();
        screen.Line($"Confidence {Show.Confidence(result.Confidence)}, two-sided. wilson-effective uses the normal quantile and suits 30 clusters and more;");
        screen.Line("wilson-widened and korn-graubard allow for few clusters.");
        screen.Caution();
    }

    private static void Render(ClusterGroup group, Screen screen)
    {
        screen.Title($"{Show.Count(group.Successes)} of {Show.Count(group.Trials)} in {Show.Count(group.Clusters)} clusters: {Show.Number(group.Estimate)}");
        screen.Line($"variance between clusters {Show.Number(group.Variance)}, standard error {Show.Number(group.StandardError)}");
        screen.Line($"design effect {Show.Number(group.DesignEffect)}, effective trials {Show.Number(group.EffectiveTrials)}, intraclass correlation {Show.Number(group.IntraclassCorrelation)}");
        if (group.DesignEffect.Reason is { } reason) screen.Line($"the design effect is undefined, and no limit is widened: {reason}");
        if (group.IntraclassCorrelation.Reason is { } why) screen.Line($"the intraclass correlation is undefined: {why}");
        screen.Line();
        screen.Table(
            [new("method"), new("lower", true), new("upper", true)],
            group.Intervals.Select(one => new[] { one.Method, Show.Number(one.Lower), Show.Number(one.Upper) }));
        var noted = group.Intervals.Where(one => one.Note is not null).ToList();
        if (noted.Count > 0) screen.Text($"{string.Join(", ", noted.Select(one => one.Method))}: {noted[0].Note}.");
    }
}
