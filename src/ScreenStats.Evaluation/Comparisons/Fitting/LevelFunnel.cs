using System.Collections.Immutable;
using ScreenStats.Evaluation.Comparisons.Rows;
using ScreenStats.Evaluation.Comparisons.Strata;
using ScreenStats.Evaluation.Methods;
using ScreenStats.Statistics.Clusters;
using ScreenStats.Statistics.Funnels;
using ScreenStats.Statistics.Heterogeneity;
using ScreenStats.Statistics.Multiplicity;
using ScreenStats.Statistics.Numerics;

namespace ScreenStats.Evaluation.Comparisons.Fitting;

/// <summary>Levels against their size, at the program's mix and as counted.</summary>
internal sealed class LevelFunnel
{
    private const double Inner = 0.95;
    private const double Outer = 0.998;
    private readonly ComparedStrata strata;
    private readonly double designEffect;

    /// <summary>Places the levels.</summary>
    /// <param name="strata">What is compared.</param>
    /// <param name="expected">Events expected of each level at the program's rates; null where nothing can be.</param>
    /// <param name="designEffect">How many times clusters raise the variance.</param>
    /// <param name="confidence">What a chance must be below to stand out is what this leaves.</param>
    public LevelFunnel(ComparedStrata strata, IReadOnlyList<double?> expected, double designEffect, double confidence)
    {
        (this.strata, this.designEffect) = (strata, designEffect);
        var rate = strata.Rate;
        GroupCount[] adjusted =
        [
            .. strata.Levels.Select((level, i) => expected[i] is { } e && e > 0 && rate > 0
                ? new GroupCount(level.Events, Math.Max(Math.Max(level.Events, 1), (long)Math.Round(e / rate))) : new GroupCount(0, 0)),
        ];
        Fair = Funnel(adjusted);
        var raw = Funnel([.. strata.Levels.Select(level => new GroupCount(level.Events, level.Trials))]);
        var p = Fair.Points.Select(Chance).ToArray();
        var known = Enumerable.Range(0, p.Length).Where(i => p[i] is not null).ToArray();
        var holm = MultipleComparisons.Holm([.. known.Select(i => p[i]!.Value)]);
        Places =
        [
            .. Fair.Points.Select((point, i) =>
            {
                var at = Array.IndexOf(known, i);
                double? adjustedP = at >= 0 ? holm[at] : null;
                double? limits = point.Outer is FunnelStanding.Above or FunnelStanding.Below ? Outer : point.Inner is FunnelStanding.Above or FunnelStanding.Below ? Inner : null;
                return new ComparisonPlace(
                    point.Group.Trials, point.Group.Trials > 0 ? (double)point.Group.Events / point.Group.Trials : null, Standing(point.Inner), limits, Standing(raw.Points[i].Inner), p[i], adjustedP,
                    adjustedP < 1 - confidence);
            }),
        ];
    }

    /// <summary>The funnel at the program's mix.</summary>
    public Funnel Fair { get; }

    /// <summary>Where each level lies, in the order of levels.</summary>
    public IReadOnlyList<ComparisonPlace> Places { get; }

    /// <summary>What the limits allow for, by the name of the method; null where there is no funnel.</summary>
    public string? Model => Fair.Target is null ? null : Fair.Model == FunnelModel.Additive ? MethodNames.FunnelAdditive : MethodNames.FunnelExact;

    /// <summary>Limits at a grid of round sizes, up to the first that holds all levels.</summary>
    public IEnumerable<(long Trials, double Centre, double Lower95, double Upper95, double Lower998, double Upper998)> Limits()
    {
        if (Fair.Target is not { } target) yield break;
        var largest = Fair.Points.Max(point => point.Group.Trials);
        foreach (var trials in Grid())
        {
            if (Fair.LimitsAt(trials, Fair.Options.Inner) is { } inner && Fair.LimitsAt(trials, Fair.Options.Outer) is { } outer)
                yield return (trials, target, inner.Lower, inner.Upper, outer.Lower, outer.Upper);
            if (trials >= largest) yield break;
        }
    }

    private static List<long> Grid()
    {
        ReadOnlySpan<int> steps = [10, 12, 15, 20, 25, 30, 40, 50, 60, 70, 80, 90];
        var grid = new List<long>();
        for (var scale = 1L; scale < 100_000_000_000L; scale *= 10)
        {
            foreach (var step in steps) grid.Add(step * scale);
        }

        return grid;
    }

    private static ComparisonStanding Standing(FunnelStanding? standing) => standing switch
    {
        FunnelStanding.Within => ComparisonStanding.Within,
        FunnelStanding.Above => ComparisonStanding.Above,
        FunnelStanding.Below => ComparisonStanding.Below,
        _ => ComparisonStanding.NotPlaced,
    };

    /// <summary>A funnel whose limits allow for usual differences where there are enough levels to know them, and for clusters else.</summary>
    private Funnel Funnel(IReadOnlyList<GroupCount> groups)
    {
        var usual = FunnelPlot.Of(groups);
        if (usual.Model == FunnelModel.Additive && groups.Count(group => group.Trials > 0) >= WidenedInterval.FewestGroups) return usual;
        double Widened(double level) => Widening.Confidence(Math.Min(7.5, Quantile.Normal(level) * Math.Sqrt(designEffect)));
        return FunnelPlot.Of(groups, new FunnelOptions { Model = FunnelModel.Exact, Inner = Widened(Inner), Outer = Widened(Outer) });
    }

    private double? Chance(FunnelPoint point) =>
        point.Reason is not null || Fair.Target is not { } target ? null
        : Fair.Model == FunnelModel.Additive ? TailProbability.Normal(point.AdditiveScore!.Value)
        : FunnelChance.TwoSided(target, point.Group.Events, point.Group.Trials, designEffect);
}
