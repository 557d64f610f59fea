using System.Collections.Immutable;
using ScreenStats.Cli.Parsing;
using ScreenStats.Cli.Results;
using ScreenStats.Cli.Terminal;
using ScreenStats.Statistics;
using ScreenStats.Statistics.Comparison;
using ScreenStats.Statistics.Comparison.Paired;

namespace ScreenStats.Cli.Commands;

/// <summary>The paired form of <c>contrast</c>: two readings of the same people.</summary>
internal static class PairedContrast
{
    /// <summary>Four counts: positive in both, in the first only, in the second only, in neither.</summary>
    public static PairedCounts Counts(string name, string text)
    {
        const string Example = "59,6,16,80";
        var counts = Figures.CountList(name, text, Example);
        return counts.Length == 4
            ? new PairedCounts(counts[0], counts[1], counts[2], counts[3])
            : throw new UsageException($"{name}: {text} is not four counts; write those positive in both, in the first only, in the second only and in neither, such as {Example}.");
    }

    public static void Run(Invocation invocation, PairedCounts counts, IReadOnlyList<ContrastMeasure> measures, double level, bool json)
    {
        if (!measures.Contains(ContrastMeasure.Difference) && !measures.Contains(ContrastMeasure.OddsRatio))
            throw new UsageException("--measure: pairs have a difference and an odds-ratio here, no ratio.");
        var estimates = measures.Where(one => one != ContrastMeasure.Ratio)
            .Select(one => one == ContrastMeasure.Difference ? PairedDifference.Newcombe(counts, level) : PairedOddsRatio.ConditionalExact(counts, level))
            .ToImmutableArray();
        var noTrials = UndefinedReason.NoTrials.Describe();
        Figure Share(long positive) => Figure.Of(counts.Pairs == 0 ? null : (double)positive / counts.Pairs, noTrials);
        Figure P(Func<PairedCounts, double> test) => counts.Pairs == 0 ? Figure.Undefined(noTrials) : Figure.Of(test(counts));
        var result = new PairedContrastResult(
            Share(counts.FirstPositive), Share(counts.SecondPositive),
            ContrastItems.Of(estimates, ContrastMeasure.Difference), ContrastItems.Of(estimates, ContrastMeasure.OddsRatio),
            P(McNemar.TwoSided), P(McNemar.TwoSidedMidP), P(McNemar.Greater), P(McNemar.Less),
            counts.Both, counts.FirstOnly, counts.SecondOnly, counts.Neither, level);

        if (json) invocation.Output.Write(ResultJson.Write(result));
        else Render(result, counts, estimates, invocation.Screen);
    }

    private static void Render(PairedContrastResult result, PairedCounts counts, ImmutableArray<ContrastEstimate> estimates, Screen screen)
    {
        screen.Title(
            $"{Show.Count(counts.Pairs)} pairs: first positive in {Show.Count(counts.FirstPositive)} ({Show.Number(result.First)}), "
            + $"second in {Show.Count(counts.SecondPositive)} ({Show.Number(result.Second)})");
        screen.Line($"{Show.Count(counts.FirstOnly)} positive in the first only, {Show.Count(counts.SecondOnly)} in the second only");
        ContrastItems.Table(estimates, screen);
        if (result.McNemarPValue.Value is not null)
        {
            screen.Line($"McNemar's exact test: {Show.PValue(result.McNemarPValue)} two-sided ({Show.PValue(result.McNemarMidPValue)} as mid-P);");
            screen.Line($"one-sided {Show.PValue(result.McNemarGreaterPValue)} if the first is expected positive more often, {Show.PValue(result.McNemarLessPValue)} if less often.");
        }

        screen.Line($"Confidence {Show.Confidence(result.Confidence)}, two-sided. The odds ratio is that of the pairs that differ, first only over second only.");
        screen.Line("Each person counts once.");
        screen.Caution();
    }
}
