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
        var p = Fair.Points.Select(point => Chance(Fair, point)).ToArray();
        int[] known = [.. Enumerable.Range(0, p.Length).Where(i => p[i] is not null)];
        var holm = new double?[p.Length];
        foreach (var (i, adjustedP) in known.Zip(MultipleComparisons.Holm([.. known.Select(i => p[i]!.Value)]))) holm[i] = adjustedP;
        Places =
        [
            .. Fair.Points.Select((point, i) => new ComparisonPlace(
                point.Group.Trials, point.Group.Rate, Standing(Fair, point, p[i]), p[i] < 1 - Outer ? Outer : p[i] < 1 - Inner ? Inner : null,
                Standing(raw, raw.Points[i], Chance(raw, raw.Points[i])), p[i], holm[i], holm[i] < 1 - confidence)),
        ];
    }

    /// <summary>The funnel at the program's mix.</summary>
    public Funnel Fair { get; }

    /// <summary>Where each level lies, in the order of levels.</summary>
    public IReadOnlyList<ComparisonPlace> Places { get; }

    /// <summary>What the limits allow for, by the name of the method; null where there is no funnel.</summary>
    public string? Model => Fair.Target is null ? null : Fair.Model == FunnelModel.Additive ? MethodNames.FunnelAdditive : MethodNames.FunnelExact;

    /// <summary>
    /// Limits at a grid of round sizes, from below the smallest level to the first that holds all: those that judge, and where they allow for usual
    /// differences those of chance alone too.
    /// </summary>
    public IEnumerable<(string Model, long Trials, double Centre, double Lower95, double Upper95, double Lower998, double Upper998)> Limits()
    {
        if (Fair.Target is not { } target) yield break;
        var sizes = Fair.Points.Where(point => point.Group.Trials > 0).Select(point => point.Group.Trials).ToList();
        var grid = Grid().SkipWhile(trials => trials * 3 < sizes.Min()).ToList();
        grid = [.. grid.Take(grid.FindIndex(trials => trials >= sizes.Max()) + 1)];
        ReadOnlySpan<FunnelModel> models = Fair.Model == FunnelModel.Additive ? [FunnelModel.Additive, FunnelModel.Exact] : [FunnelModel.Exact];
        foreach (var model in models.ToArray())
        {
            // Limits of chance alone are widened for clusters; those that allow for usual differences hold what clusters add.
            var (near, far) = model == Fair.Model ? (Fair.Options.Inner, Fair.Options.Outer) : (Widened(Inner), Widened(Outer));
            foreach (var trials in grid)
            {
                if (Fair.LimitsAt(trials, near, model) is { } inner && Fair.LimitsAt(trials, far, model) is { } outer)
                    yield return (model == FunnelModel.Additive ? MethodNames.FunnelAdditive : MethodNames.FunnelExact, trials, target, inner.Lower, inner.Upper, outer.Lower, outer.Upper);
            }
        }
    }

    private static List<long> Grid()
    {
        ReadOnlySpan<int> steps = [10, 11, 12, 13, 14, 15, 16, 18, 20, 22, 24, 27, 30, 33, 36, 40, 45, 50, 55, 60, 65, 70, 80, 90];
        var grid = new List<long>();
        for (var scale = 1L; scale < 100_000_000_000L; scale *= 10)
        {
            foreach (var step in steps) grid.Add(step * scale);
        }

        return grid;
    }

    // Interpolated limits leave more than their share outside where trials are few, so the exact chance decides what is said.
    private static ComparisonStanding Standing(Funnel funnel, FunnelPoint point, double? p) =>
        p is null ? ComparisonStanding.NotPlaced
        : p >= 1 - Inner ? ComparisonStanding.Within
        : point.Group.Rate > funnel.Target ? ComparisonStanding.Above : ComparisonStanding.Below;

    /// <summary>A funnel whose limits allow for usual differences where there are enough levels to know them, and for clusters else.</summary>
    private Funnel Funnel(IReadOnlyList<GroupCount> groups)
    {
        var usual = FunnelPlot.Of(groups, new FunnelOptions { Model = FunnelModel.Additive, Inner = Inner, Outer = Outer });
        if (usual.Overdispersed && groups.Count(group => group.Trials > 0) >= WidenedInterval.FewestGroups) return usual;
        return usual with { Model = FunnelModel.Exact, Options = usual.Options with { Model = FunnelModel.Exact, Inner = Widened(Inner), Outer = Widened(Outer) } };
    }

    // At the most that can be told from certainty the outer limits stay beyond the inner ones.
    private double Widened(double level) => Widening.Confidence(Math.Min(level >= Outer ? 7.5 : 7, Quantile.Normal(level) * Math.Sqrt(designEffect)));

    private double? Chance(Funnel funnel, FunnelPoint point) =>
        point.Reason is not null || funnel.Target is not { } target ? null
        : funnel.Model == FunnelModel.Additive ? TailProbability.Normal(point.AdditiveScore!.Value)
        : FunnelChance.TwoSided(target, point.Group.Events, point.Group.Trials, designEffect);
}
