using System.Collections.Immutable;
using System.CommandLine;
using ScreenStats.Cli.Parsing;
using ScreenStats.Cli.Results;
using ScreenStats.Cli.Terminal;
using ScreenStats.Statistics.Agreement;
using ScreenStats.Statistics.Comparison.Paired;

namespace ScreenStats.Cli.Commands;

/// <summary><c>agreement 40,9,6,45</c>: how far two readings of the same people agree.</summary>
internal sealed class AgreementCommand : RunnerCommand
{
    private readonly Argument<string> table;
    private readonly Option<string> weights;
    private readonly Option<string> confidence;

    public AgreementCommand()
        : base("agreement", "How far two readings of the same people agree: shares and kappa",
            "screenstats agreement 40,9,6,45",
            "screenstats agreement 22,2,2,0/5,7,14,0/0,2,36,0/0,1,17,10 --weights quadratic")
    {
        table = TakeArgument("table",
            "Counts by rows: rows are the first reading, columns the second, positive first. More categories: rows apart by /, as 22,2,2/5,7,14/0,2,36.");
        weights = TakeOption("--weights", "name", "linear or quadratic: also a kappa in which near misses count less. Categories in their order.");
        weights.CompletionSources.Add("linear", "quadratic");
        confidence = TakeOption("--confidence", "fraction", "Confidence of the limits. Default 0.95.");
        TakeJson();
    }

    public override int Run(Invocation invocation)
    {
        var counts = AgreementTable.Of([.. Figures.SquareTable("<table>", invocation.Text(table)).Select(row => (IReadOnlyList<long>)row)]);
        var level = Figures.Confidence("--confidence", invocation.Text(confidence) ?? "0.95");
        var weighting = invocation.Text(weights) switch
        {
            null => (KappaWeights?)null,
            "linear" => KappaWeights.Linear,
            "quadratic" => KappaWeights.Quadratic,
            var other => throw new UsageException($"--weights: \"{other}\" is not known; write linear or quadratic."),
        };

        ShareItem? Share(Func<PairedCounts, double, Statistics.Proportions.ProportionEstimate> share, bool swapped) => counts.Pairs is { } pairs
            ? ShareItem.Of(share(swapped ? new PairedCounts(pairs.Both, pairs.SecondOnly, pairs.FirstOnly, pairs.Neither) : pairs, level))
            : null;
        var noTrials = Statistics.UndefinedReasons.Describe(Statistics.UndefinedReason.NoTrials);
        var result = new AgreementResult(
            counts.Rows, counts.Total, level,
            ShareItem.Of(PercentAgreement.Overall(counts, level)),
            Share(PercentAgreement.Positive, false), Share(PercentAgreement.Negative, false), Share(PercentAgreement.Positive, true), Share(PercentAgreement.Negative, true),
            [.. Enumerable.Range(0, counts.Categories).Select(category => EstimateItem.Of(PercentAgreement.Specific(counts, category, level)))],
            KappaItem.Of(Kappa.Cohen(counts, KappaWeights.None, level)),
            weighting is { } chosen ? KappaItem.Of(Kappa.Cohen(counts, chosen, level)) : null,
            EstimateItem.Of(Kappa.PrevalenceAdjusted(counts, level)),
            counts.Pairs is { } two ? new(Figure.Of(AgreementIndex.Prevalence(two), noTrials), Figure.Of(AgreementIndex.Bias(two), noTrials)) : null,
            [.. AgreementCautions.Of(counts).Select(caution => caution.Describe())]);

        if (WantsJson(invocation)) invocation.Output.Write(ResultJson.Write(result));
        else Render(result, invocation.Screen);
        return ExitCode.Done;
    }

    private static void Render(AgreementResult result, Screen screen)
    {
        screen.Title($"Agreement of two readings: {Show.Count(result.OverallAgreement.Successes)} of {Show.Count(result.Total)} in {result.Counts.Length} categories");
        screen.Line();
        var rows = Rows(result).ToImmutableArray();
        screen.Table(
            [new("measure"), new("of", true), new("estimate", true), new("lower", true), new("upper", true), new("method")],
            rows.Select(row => new[] { row.Name, row.Of, Show.Number(row.Estimate), Show.Number(row.Lower), Show.Number(row.Upper), row.Method }));
        foreach (var line in Show.Reasons([.. rows.Select(row => (row.Name, row.Estimate.Reason))])) screen.Line(line);
        screen.Line();
        foreach (var kappa in new[] { result.Kappa, result.WeightedKappa })
        {
            if (kappa is null || kappa.Estimate.Value is null) continue;
            var name = kappa.Weights == "none" ? "kappa" : $"{kappa.Weights} kappa";
            screen.Line(
                $"{name}: agreement {Show.Number(kappa.ObservedAgreement)} observed, {Show.Number(kappa.ChanceAgreement)} by chance; standard error "
                + $"{Show.Number(kappa.StandardError)}, {Show.Number(kappa.StandardErrorUnderChance)} if by chance only");
        }

        if (result.Indices is { Prevalence.Value: not null } indices)
            screen.Line($"prevalence index {Show.Number(indices.Prevalence)}, bias index {Show.Number(indices.Bias)}");
        foreach (var caution in result.Cautions) screen.Attention(caution);
        if (result.Kappa.Estimate.Value is not null) screen.Line();
        screen.Line($"Confidence {Show.Confidence(result.Confidence)}, two-sided. Percent agreement is with a reading that may itself be wrong: it is not sensitivity or");
        screen.Line("specificity. Each person counts once.");
        screen.Caution();
    }

    private static IEnumerable<Row> Rows(AgreementResult result)
    {
        static Row Share(string name, ShareItem item) =>
            new(name, $"{Show.Count(item.Successes)} of {Show.Count(item.Trials)}", item.Estimate, item.Lower, item.Upper, item.Method);
        static Row Kappa(string name, KappaItem item) => new(name, "", item.Estimate, item.Lower, item.Upper, Statistics.Agreement.Kappa.MethodName);

        yield return Share("overall", result.OverallAgreement);
        if (result.PositivePercentAgreement is { } positive) yield return Share("positive, first with second", positive);
        if (result.NegativePercentAgreement is { } negative) yield return Share("negative, first with second", negative);
        if (result.PositivePercentAgreementSwapped is { } positiveSwapped) yield return Share("positive, second with first", positiveSwapped);
        if (result.NegativePercentAgreementSwapped is { } negativeSwapped) yield return Share("negative, second with first", negativeSwapped);
        for (var category = 0; category < result.SpecificAgreements.Length; category++)
        {
            var item = result.SpecificAgreements[category];
            var name = result.Counts.Length > 2 ? $"specific, category {category + 1}" : category == 0 ? "specific, positive" : "specific, negative";
            yield return new(name, "", item.Estimate, item.Lower, item.Upper, PercentAgreement.SpecificMethodName);
        }

        yield return Kappa("kappa", result.Kappa);
        if (result.WeightedKappa is { } weighted) yield return Kappa($"kappa, {weighted.Weights} weights", weighted);
        var adjusted = result.PrevalenceAdjustedKappa;
        yield return new("kappa, prevalence-adjusted", "", adjusted.Estimate, adjusted.Lower, adjusted.Upper, Statistics.Agreement.Kappa.AdjustedMethodName);
    }

    private readonly record struct Row(string Name, string Of, Figure Estimate, Figure Lower, Figure Upper, string Method);
}
