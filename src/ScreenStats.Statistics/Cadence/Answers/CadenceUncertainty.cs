using ScreenStats.Statistics.Accuracy;

namespace ScreenStats.Statistics.Cadence.Answers;

/// <summary>How well the shares are known that ways of screening are compared with, and how limits are made of it.</summary>
public sealed record CadenceUncertainty
{
    /// <summary>The sensitivity; null where it is not known.</summary>
    public AccuracyStatement? Sensitivity { get; init; }

    /// <summary>The specificity; null where it is not known.</summary>
    public AccuracyStatement? Specificity { get; init; }

    /// <summary>New infections per person-day; null where not known.</summary>
    public AccuracyStatement? Incidence { get; init; }

    /// <summary>Draws, 100 to <see cref="UncertainFigures.MostDraws"/>.</summary>
    public int Draws { get; init; } = 2000;

    /// <summary>Where the random order of the draws starts.</summary>
    public ulong Seed { get; init; } = 1;

    /// <summary>Confidence of the limits, in (0, 1).</summary>
    public double Confidence { get; init; } = 0.95;

    /// <summary>Whether any of the three is known by counts or with an interval.</summary>
    public bool Any => Uncertain(Sensitivity) || Uncertain(Specificity) || Uncertain(Incidence);

    internal static bool Uncertain(AccuracyStatement? share) => share is { LogitVariance: > 0 };
}
