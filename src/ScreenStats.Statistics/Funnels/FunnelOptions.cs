namespace ScreenStats.Statistics.Funnels;

/// <summary>What a funnel stands around and how wide it is.</summary>
public sealed record FunnelOptions
{
    /// <summary>The rate the funnel stands around, in [0, 1]; null takes all events over all trials.</summary>
    public double? Target { get; init; }

    /// <summary>The confidence of the inner limits, in (0, 1).</summary>
    public double Inner { get; init; } = 0.95;

    /// <summary>The confidence of the outer limits, in (0, 1), above the inner.</summary>
    public double Outer { get; init; } = 0.998;

    /// <summary>The share of scores drawn in at each end before overdispersion is estimated, in [0, 0.5).</summary>
    public double Winsorised { get; init; } = 0.1;

    /// <summary>The scale of scores and overdispersion.</summary>
    public FunnelScale Scale { get; init; } = FunnelScale.Proportion;

    /// <summary>The model of the limits; null chooses the additive one where the groups are overdispersed, else the exact one.</summary>
    public FunnelModel? Model { get; init; }

    /// <summary>The p-value below which the groups are held to be overdispersed, in (0, 1).</summary>
    public double Level { get; init; } = 0.05;

    /// <summary>
    /// How many times the variance of a group's rate exceeds that of independent trials, 1 or more: the same people and days come again. One figure for
    /// all groups, since the limits are drawn over size alone; divided counts of each group would hide its size. Differences between the groups
    /// themselves belong into the model, not here.
    /// </summary>
    public double DesignEffect { get; init; } = 1;

    internal void Check()
    {
        if (Target is { } target) Guard.Probability(target, nameof(Target));
        Guard.Confidence(Inner);
        Guard.Confidence(Outer);
        Guard.Confidence(Level);
        Guard.DesignEffect(DesignEffect);
        if (Outer <= Inner) throw new ArgumentOutOfRangeException(nameof(Outer), Outer, "The confidence of the outer limits must lie above that of the inner ones.");
        if (!(Winsorised >= 0 && Winsorised < 0.5)) throw new ArgumentOutOfRangeException(nameof(Winsorised), Winsorised, "The share drawn in must be 0 or more and below 0.5.");
        if (!Enum.IsDefined(Scale)) throw new ArgumentOutOfRangeException(nameof(Scale), Scale, "Not a scale this library knows.");
        if (Model is { } model && !Enum.IsDefined(model)) throw new ArgumentOutOfRangeException(nameof(Model), model, "Not a model this library knows.");
    }
}
