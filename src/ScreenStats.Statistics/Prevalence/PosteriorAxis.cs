using ScreenStats.Statistics.Accuracy;
using ScreenStats.Statistics.Numerics;

namespace ScreenStats.Statistics.Prevalence;

/// <summary>One unknown share: a beta distribution of its own, or a value taken as exact.</summary>
internal readonly struct PosteriorAxis
{
    public PosteriorAxis(BetaDistribution known)
    {
        Alpha = known.Alpha;
        Beta = known.Beta;
    }

    private PosteriorAxis(double value)
    {
        IsExact = true;
        Value = value;
    }

    public bool IsExact { get; }

    public double Value { get; }

    public double Alpha { get; }

    public double Beta { get; }

    public static PosteriorAxis Of(AccuracyStatement stated, BetaDistribution prior) =>
        stated.Posterior(prior) is { } known ? new PosteriorAxis(known) : new PosteriorAxis(stated.Value);
}
