namespace ScreenStats.Statistics.Monitoring.Lots;

/// <summary>How the ratio of a lot to the others is bounded and judged.</summary>
public sealed record LotRatioOptions
{
    /// <summary>The confidence of the limits, in (0, 1).</summary>
    public double Confidence { get; init; } = 0.95;

    /// <summary>
    /// By how much the variance of counts between alike lots exceeds chance, finite and 1 or more: the limits are those of a normal quantile
    /// times its square root.
    /// </summary>
    public double Overdispersion { get; init; } = 1;

    /// <summary>The ratio that the lower limit must reach for the excess to be material, finite and above 0.</summary>
    public double MaterialFrom { get; init; } = 1.5;

    internal void Check()
    {
        Guard.Confidence(Confidence, nameof(Confidence));
        Guard.DesignEffect(Overdispersion, nameof(Overdispersion));
        if (!(MaterialFrom > 0) || !double.IsFinite(MaterialFrom)) throw new ArgumentOutOfRangeException(nameof(MaterialFrom), MaterialFrom, "The material ratio must be a finite number above 0.");
    }
}
