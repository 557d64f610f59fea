using ScreenStats.Statistics.Heterogeneity;
using ScreenStats.Statistics.Numerics;

namespace ScreenStats.Statistics.Funnels;

/// <summary>Places groups of different size in a funnel around one rate.</summary>
public static class FunnelPlot
{
    /// <summary>Scores, overdispersion and standing of each group.</summary>
    /// <param name="groups">The groups, in the order of the points returned.</param>
    /// <param name="options">What the funnel stands around and how wide it is; null for the defaults.</param>
    /// <returns>The funnel; a reason where no group has trials or the target is 0 or 1.</returns>
    /// <exception cref="ArgumentNullException">No list.</exception>
    /// <exception cref="ArgumentOutOfRangeException">An option outside its domain.</exception>
    /// <remarks>
    /// z = (y - θ) / s, s² = D θ (1 - θ) / n, D the design effect (exact limits: √D times as far from the target). Scores beyond the q and 1 - q quantiles (type 7: linear between order statistics) are drawn in to them, so
    /// that the groups the funnel ought to show do not widen it; φ = Σ z² / I over those. Multiplicative limits θ ± c s √φ (φ at least 1);
    /// additive τ² = max(0, (I φ - (I - 1)) / (Σw - Σw² / Σw)) with w = 1 / s², limits θ ± c sqrt(s² + τ²). Overdispersed: I φ beyond the upper
    /// quantile of chi-square with I - 1 degrees of freedom, or I where the target is given. A point is outside a limit that is drawn, so that picture
    /// and words agree. Source: Spiegelhalter DJ, Stat Med 2005;24:1185-1202; Qual Saf Health Care 2005;14:347-351 (from memory).
    /// </remarks>
    public static Funnel Of(IReadOnlyList<GroupCount> groups, FunnelOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(groups);
        options ??= new FunnelOptions();
        options.Check();
        GroupCount[] used = [.. groups.Where(group => group.Trials > 0)];
        var (events, trials) = GroupCount.Sum(used);
        if (trials == 0) return Without(groups, options, null, UndefinedReason.NoTrials);
        var target = options.Target ?? ((double)events / trials);
        if (target is 0 or 1) return Without(groups, options, target, UndefinedReason.CentreAtTheEdge);

        double[] scores = [.. used.Select(group => Score(group, target, options)).Order()];
        var (low, high) = (TypeSeven(scores, options.Winsorised), TypeSeven(scores, 1 - options.Winsorised));
        double raw = 0, drawn = 0;
        foreach (var score in scores)
        {
            raw += score * score;
            drawn += Math.Pow(Math.Clamp(score, low, high), 2);
        }

        double weights = 0, squares = 0;
        foreach (var group in used.OrderBy(group => group.Trials))
        {
            var w = 1 / Math.Pow(Error(target, group.Trials, options), 2);
            weights += w;
            squares += w * w;
        }

        var count = used.Length;
        var degrees = options.Target is null ? count - 1 : count;
        double? p = degrees == 0 ? null : GammaTail.ChiSquareUpper(degrees, drawn);
        var between = count < 2 ? 0 : Math.Max(0, (drawn - (count - 1)) / (weights - (squares / weights)));
        var overdispersed = p < options.Level && drawn > count;
        var funnel = new Funnel(
            target, [], raw / count, drawn / count, p, overdispersed, between, options.Model ?? (overdispersed ? FunnelModel.Additive : FunnelModel.Exact), options, null);
        return funnel with { Points = [.. groups.Select((group, index) => Place(funnel, group, index, target, low, high))] };
    }

    internal static double Error(double target, long trials, FunnelOptions options) =>
        Math.Sqrt(options.DesignEffect) * (options.Scale == FunnelScale.Proportion ? Math.Sqrt(target * (1 - target) / trials) : 0.5 / Math.Sqrt(trials));

    internal static double Scaled(double rate, FunnelScale scale) => scale == FunnelScale.Proportion ? rate : Math.Asin(Math.Sqrt(rate));

    internal static double Unscaled(double value, FunnelScale scale) =>
        scale == FunnelScale.Proportion ? value : Math.Pow(Math.Sin(Math.Clamp(value, 0, Math.PI / 2)), 2);

    private static double Score(GroupCount group, double target, FunnelOptions options) =>
        (Scaled((double)group.Events / group.Trials, options.Scale) - Scaled(target, options.Scale)) / Error(target, group.Trials, options);

    private static FunnelPoint Place(Funnel funnel, GroupCount group, int index, double target, double low, double high)
    {
        if (group.Trials == 0) return new FunnelPoint(index, group, null, null, null, null, null, null, UndefinedReason.NoTrials);
        var score = Score(group, target, funnel.Options);
        var error = Error(target, group.Trials, funnel.Options);
        var additive = score * error / Math.Sqrt((error * error) + funnel.BetweenVariance!.Value);
        FunnelStanding Standing(double confidence)
        {
            if (funnel.Model == FunnelModel.Exact) return FunnelLimits.Standing(target, group, confidence, funnel.Options.DesignEffect);
            var rate = (double)group.Events / group.Trials;
            var limits = funnel.Limits(target, group.Trials, confidence, funnel.Model);

            // What equals a limit but for rounding is not outside it.
            var slack = 1e-12 * rate;
            return rate > limits.Upper + slack ? FunnelStanding.Above : rate < limits.Lower - slack ? FunnelStanding.Below : FunnelStanding.Within;
        }

        return new FunnelPoint(
            index, group, score, Math.Clamp(score, low, high), score / Math.Sqrt(Math.Max(1, funnel.WinsorisedOverdispersion!.Value)), additive,
            Standing(funnel.Options.Inner), Standing(funnel.Options.Outer), null);
    }

    private static Funnel Without(IReadOnlyList<GroupCount> groups, FunnelOptions options, double? target, UndefinedReason reason) => new(
        target is 0 or 1 ? null : target,
        [.. groups.Select((group, index) => new FunnelPoint(index, group, null, null, null, null, null, null, group.Trials == 0 ? UndefinedReason.NoTrials : reason))],
        null, null, null, false, null, options.Model ?? FunnelModel.Exact, options, reason);

    private static double TypeSeven(double[] sorted, double fraction)
    {
        var place = (sorted.Length - 1) * fraction;
        var below = (int)Math.Floor(place);
        return below + 1 < sorted.Length ? sorted[below] + ((place - below) * (sorted[below + 1] - sorted[below])) : sorted[^1];
    }
}
