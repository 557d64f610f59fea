namespace ScreenStats.Statistics.Trends.Weekdays;

/// <summary>How weekdays are compared.</summary>
public sealed record WeekdayOptions
{
    /// <summary>How weeks are kept out.</summary>
    public WeekAdjustment Adjustment { get; init; } = WeekAdjustment.Automatic;

    /// <summary>What errors and test allow for beyond binomial chance; with <see cref="DispersionScale.PearsonAtLeastOne"/> at least the design effect.</summary>
    public DispersionScale Scale { get; init; } = DispersionScale.PearsonAtLeastOne;

    /// <summary>How much larger than binomial the variance is known to be, 1 or more. Not used with <see cref="DispersionScale.Pearson"/>.</summary>
    public double DesignEffect { get; init; } = 1;

    /// <summary>The confidence of the limits, in (0, 1).</summary>
    public double Confidence { get; init; } = 0.95;

    internal void Check()
    {
        if (!Enum.IsDefined(Adjustment)) throw new ArgumentOutOfRangeException(nameof(Adjustment), Adjustment, "Not an adjustment this library knows.");
        if (!Enum.IsDefined(Scale)) throw new ArgumentOutOfRangeException(nameof(Scale), Scale, "Not a scale this library knows.");
        Guard.DesignEffect(DesignEffect);
        Guard.Confidence(Confidence);
    }
}
