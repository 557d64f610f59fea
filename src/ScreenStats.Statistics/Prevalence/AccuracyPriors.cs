using ScreenStats.Statistics.Numerics;

namespace ScreenStats.Statistics.Prevalence;

/// <summary>What was known before the counts: beta distributions of prevalence, sensitivity and specificity. By default all uniform.</summary>
public sealed record AccuracyPriors
{
    /// <summary>All three uniform.</summary>
    public static AccuracyPriors Uniform { get; } = new();

    /// <summary>Of the prevalence.</summary>
    public BetaDistribution Prevalence { get; init; } = BetaDistribution.Uniform;

    /// <summary>Of the sensitivity, before the counts or the interval it is stated with; without effect on an exact value.</summary>
    public BetaDistribution Sensitivity { get; init; } = BetaDistribution.Uniform;

    /// <summary>Of the specificity, before the counts or the interval it is stated with; without effect on an exact value.</summary>
    public BetaDistribution Specificity { get; init; } = BetaDistribution.Uniform;
}
