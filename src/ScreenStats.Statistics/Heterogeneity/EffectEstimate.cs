namespace ScreenStats.Statistics.Heterogeneity;

/// <summary>One group's figure with its sampling variance, for instance the logit of a site's rate.</summary>
public readonly record struct EffectEstimate
{
    /// <summary>Makes the pair.</summary>
    /// <param name="value">The figure, finite.</param>
    /// <param name="variance">Its sampling variance, finite and above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">A figure that is not finite, or a variance that is not above 0.</exception>
    public EffectEstimate(double value, double variance)
    {
        Guard.Finite(value);
        if (!(variance > 0) || !double.IsFinite(variance)) throw new ArgumentOutOfRangeException(nameof(variance), variance, "The variance must be a finite number above 0.");
        Value = value;
        Variance = variance;
    }

    /// <summary>The figure.</summary>
    public double Value { get; }

    /// <summary>Its sampling variance.</summary>
    public double Variance { get; }

    /// <summary>The logit of a group's rate with half an event added to both sides, so that it exists where nothing or everything was an event.</summary>
    /// <param name="group">The group, with at least one trial.</param>
    /// <returns>ln((x + ½) / (n - x + ½)) with variance 1 / (x + ½) + 1 / (n - x + ½).</returns>
    /// <exception cref="ArgumentOutOfRangeException">A group without trials.</exception>
    public static EffectEstimate Logit(GroupCount group)
    {
        if (group.Trials == 0) throw new ArgumentOutOfRangeException(nameof(group), group.Trials, "A group without trials has no rate.");
        var (x, y) = (group.Events + 0.5, group.Trials - group.Events + 0.5);
        return new EffectEstimate(Math.Log(x / y), (1 / x) + (1 / y));
    }
}
