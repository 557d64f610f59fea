namespace ScreenStats.Statistics.Trends.Smooths;

/// <summary>How a rate that wanders from period to period is smoothed.</summary>
public sealed record BinomialLevelOptions
{
    /// <summary>The standard deviation of the step of the logit from one period to the next, 0 to 10; null (the default) for the most likely one.</summary>
    public double? Sigma { get; init; }

    /// <summary>What is known before the first count; by default nothing.</summary>
    public LevelStart Start { get; init; } = LevelStart.Diffuse;

    /// <summary>
    /// Whether the smoothed figures hold the uncertainty of sigma too: each is the average over sigma, weighted by its likelihood times a half-normal
    /// density of standard deviation <see cref="SigmaScale"/>. False by default. Not used where sigma is given.
    /// </summary>
    public bool AverageOverSigma { get; init; }

    /// <summary>The standard deviation of the half-normal density of sigma where it is averaged over, above 0 and at most 10. 1 by default, which is wide: the odds commonly change by a factor of e in a period.</summary>
    public double SigmaScale { get; init; } = 1;

    /// <summary>The confidence of the band, in (0, 1); 0.95 by default.</summary>
    public double Confidence { get; init; } = 0.95;

    internal void Check()
    {
        ArgumentNullException.ThrowIfNull(Start);
        Guard.Confidence(Confidence);
        if (Sigma is { } sigma && !(sigma >= 0 && sigma <= 10)) throw new ArgumentOutOfRangeException(nameof(Sigma), sigma, "Sigma lies between 0 and 10.");
        if (!(SigmaScale > 0 && SigmaScale <= 10)) throw new ArgumentOutOfRangeException(nameof(SigmaScale), SigmaScale, "The scale of sigma lies above 0 and is at most 10.");
    }
}
