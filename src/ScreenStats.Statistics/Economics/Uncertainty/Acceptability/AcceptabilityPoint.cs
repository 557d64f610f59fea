using System.Collections.Immutable;

namespace ScreenStats.Statistics.Economics.Uncertainty.Acceptability;

/// <summary>How likely each option is the best one at one value of an effect.</summary>
public sealed record AcceptabilityPoint
{
    internal AcceptabilityPoint(double valueOfEffect, ImmutableArray<double> chances, ImmutableArray<double> means, int best, int draws)
    {
        ValueOfEffect = valueOfEffect;
        Chances = chances;
        MeanNetBenefits = means;
        Best = best;
        Draws = draws;
    }

    /// <summary>What one effect is worth.</summary>
    public double ValueOfEffect { get; }

    /// <summary>For each option the share of the draws in which it has the highest net benefit, of equal ones the first; they add up to 1.</summary>
    public ImmutableArray<double> Chances { get; }

    /// <summary>For each option its mean net benefit.</summary>
    public ImmutableArray<double> MeanNetBenefits { get; }

    /// <summary>The option with the highest mean net benefit, by its place: the one to choose, which need not be the one most often best.</summary>
    public int Best { get; }

    /// <summary>How likely that one is the best: the acceptability frontier.</summary>
    public double ChanceOfBest => Chances[Best];

    /// <summary>The draws.</summary>
    public int Draws { get; }

    /// <summary>The standard error of an option's chance from the number of draws.</summary>
    /// <param name="option">Its place.</param>
    /// <returns>The root of p (1 - p)/draws.</returns>
    /// <exception cref="ArgumentOutOfRangeException">No such option.</exception>
    public double StandardError(int option)
    {
        if (option < 0 || option >= Chances.Length) throw new ArgumentOutOfRangeException(nameof(option), option, "There is no option at this place.");
        return Math.Sqrt(Math.Max(Chances[option] * (1 - Chances[option]), 0) / Draws);
    }
}
