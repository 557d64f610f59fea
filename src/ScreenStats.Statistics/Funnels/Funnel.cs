using ScreenStats.Statistics.Numerics;

namespace ScreenStats.Statistics.Funnels;

/// <summary>Groups against their size: which lie farther from the target than chance, or chance and the usual differences, would put them.</summary>
/// <param name="Target">The rate the funnel stands around; null with a <see cref="Reason"/>.</param>
/// <param name="Points">One point for each group, in the order given.</param>
/// <param name="Overdispersion">The mean of the squared scores, φ; null with a reason.</param>
/// <param name="WinsorisedOverdispersion">The same of the winsorised scores; null with a reason.</param>
/// <param name="PValue">The chance of as much winsorised overdispersion from chance alone, by chi-square; null with a reason.</param>
/// <param name="Overdispersed">Whether that chance is below the level of the options, and the overdispersion above 1.</param>
/// <param name="BetweenVariance">The variance between groups on the funnel's scale, τ², 0 or more; null with a reason.</param>
/// <param name="Model">The model by which points are judged: the one asked for, else additive where overdispersed, else exact.</param>
/// <param name="Options">What was asked.</param>
/// <param name="Reason">Why there is no funnel; null where there is one.</param>
public sealed record Funnel(
    double? Target, IReadOnlyList<FunnelPoint> Points, double? Overdispersion, double? WinsorisedOverdispersion, double? PValue, bool Overdispersed, double? BetweenVariance,
    FunnelModel Model, FunnelOptions Options, UndefinedReason? Reason)
{
    /// <summary>The points outside the outer limits, in the order given.</summary>
    public IEnumerable<FunnelPoint> Outside => Points.Where(point => point.Outer is FunnelStanding.Above or FunnelStanding.Below);

    /// <summary>The limits at a size, by a model.</summary>
    /// <param name="trials">Trials, 1 or more.</param>
    /// <param name="confidence">Confidence in (0, 1).</param>
    /// <param name="model">The model; null for the funnel's own.</param>
    /// <returns>The limits, clipped to [0, 1]; null where there is no funnel.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its domain.</exception>
    public Interval? LimitsAt(long trials, double confidence, FunnelModel? model = null)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(trials, 1);
        Guard.Confidence(confidence);
        return Target is { } target ? Limits(target, trials, confidence, model ?? Model).Clip(0, 1) : null;
    }

    internal Interval Limits(double target, long trials, double confidence, FunnelModel model)
    {
        if (model == FunnelModel.Exact)
        {
            // Dependent trials stretch the limits away from the target as they stretch the standard error.
            var stretch = Math.Sqrt(Options.DesignEffect);
            double Stretched(double limit) => stretch == 1 ? limit : target + (stretch * (limit - target));
            return new Interval(Stretched(FunnelLimits.Exact(target, trials, (1 - confidence) / 2)), Stretched(FunnelLimits.Exact(target, trials, (1 + confidence) / 2)));
        }

        var error = FunnelPlot.Error(target, trials, Options);
        var wide = model == FunnelModel.Additive ? Math.Sqrt((error * error) + (BetweenVariance ?? 0)) : error * Math.Sqrt(Math.Max(1, WinsorisedOverdispersion ?? 1));
        var half = Quantile.Normal(confidence) * wide;
        var centre = FunnelPlot.Scaled(target, Options.Scale);
        return new Interval(FunnelPlot.Unscaled(centre - half, Options.Scale), FunnelPlot.Unscaled(centre + half, Options.Scale));
    }
}
