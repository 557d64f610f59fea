using System.Collections.Immutable;
using ScreenStats.Evaluation.Comparisons.Rows;
using ScreenStats.Evaluation.Comparisons.Strata;
using ScreenStats.Evaluation.Methods;
using ScreenStats.Evaluation.Model;
using ScreenStats.Statistics;
using ScreenStats.Statistics.Comparison;
using ScreenStats.Statistics.Heterogeneity;
using ScreenStats.Statistics.Multiplicity;
using ScreenStats.Statistics.Numerics;
using ScreenStats.Statistics.Stratified;

namespace ScreenStats.Evaluation.Comparisons.Fitting;

/// <summary>Every two levels: as counted, and within strata.</summary>
internal static class LevelPairs
{
    /// <summary>The pairs, in the order of levels; none where there are more levels than anybody compares two by two.</summary>
    /// <param name="strata">What is compared.</param>
    /// <param name="designEffect">How many times clusters raise the variance.</param>
    /// <param name="confidence">Confidence of all limits.</param>
    /// <param name="row">Makes a row from the names of the two and what is filled in here.</param>
    public static ImmutableArray<ComparisonPairRow> Of(ComparedStrata strata, double designEffect, double confidence, Func<string, string, ComparisonPairRow> row)
    {
        var levels = strata.Levels;
        if (levels.Count is < 2 or > ComparisonFindings.MostPaired) return [];
        GroupCount[] groups = [.. levels.Select(level => new GroupCount(level.Events, level.Trials))];
        var simultaneous = PairwiseComparison.Marascuilo(groups, confidence);
        var plain = PairwiseComparison.Newcombe(groups, confidence);
        var critical = Math.Sqrt(Quantile.ChiSquare(confidence, levels.Count - 1));
        var within = plain.Select(pair => Within(levels[pair.First], levels[pair.Second], critical, designEffect, confidence)).ToArray();
        var known = Enumerable.Range(0, within.Length).Where(i => within[i].P is not null).ToArray();
        var holm = MultipleComparisons.Holm([.. known.Select(i => within[i].P!.Value)]);
        return
        [
            .. plain.Select((pair, i) =>
            {
                var (first, second) = (groups[pair.First], groups[pair.Second]);
                var range = simultaneous[i].CriticalRange * Math.Sqrt(designEffect);
                var wide = Wide(first, second, designEffect, confidence);
                var at = Array.IndexOf(known, i);
                return row(levels[pair.First].Name, levels[pair.Second].Name) with
                {
                    Difference = new EstimateFinding(simultaneous[i].Difference, null, wide.Lower, wide.Upper, ContrastMethod.Newcombe.Name(), confidence),
                    P = pair.PValue,
                    PHolm = pair.AdjustedPValue,
                    SimultaneousLower = Math.Max(-1, simultaneous[i].Difference - range),
                    SimultaneousUpper = Math.Min(1, simultaneous[i].Difference + range),
                    Odds = within[i].Odds,
                    OddsP = within[i].P,
                    OddsPHolm = at >= 0 ? holm[at] : null,
                    ToldApart = within[i].Odds is { Lower: > 1 } or { Upper: < 1 },
                };
            }),
        ];
    }

    /// <summary>Newcombe's limits from limits of each that are widened.</summary>
    private static Interval Wide(GroupCount first, GroupCount second, double designEffect, double confidence)
    {
        Interval Own(GroupCount group)
        {
            var widened = Statistics.Clusters.WidenedInterval.Wilson(group.Events, group.Trials, designEffect, 0, confidence);
            return new Interval(widened.Lower ?? 0, widened.Upper ?? 1);
        }

        return ProportionDifference.SquareAndAdd((double)first.Events / first.Trials, Own(first), (double)second.Events / second.Trials, Own(second));
    }

    private static (EstimateFinding Odds, double? P) Within(ComparedLevel first, ComparedLevel second, double critical, double designEffect, double confidence)
    {
        var seconds = second.Strata.ToDictionary(at => at.Stratum);
        TwoProportions[] shared =
        [
            .. first.Strata.Where(at => seconds.ContainsKey(at.Stratum)).Select(at => new TwoProportions(at.Events, at.Trials, seconds[at.Stratum].Events, seconds[at.Stratum].Trials)),
        ];
        var test = CochranMantelHaenszel.Test(shared);
        double? p = test.Statistic is { } statistic ? TailProbability.ChiSquare(statistic / designEffect, 1) : null;
        var odds = MantelHaenszel.OddsRatio(shared, confidence);
        if (odds.Value is not { } value) return (EstimateFinding.Undefined((odds.Reason ?? UndefinedReason.NoComparableStratum).Describe()), p);
        if (odds.Interval is not { } limits || value <= 0) return (new EstimateFinding(value, null, null, null, MethodNames.OddsWithinStrata, confidence), p);
        // From the limits of one pair alone to those of all pairs: standard errors of the logarithm, so many more times.
        var half = Math.Log(limits.Upper / limits.Lower) / 2 / Quantile.Normal(confidence) * critical * Math.Sqrt(designEffect);
        return (new EstimateFinding(value, null, value * Math.Exp(-half), value * Math.Exp(half), MethodNames.OddsWithinStrata, confidence), p);
    }
}
