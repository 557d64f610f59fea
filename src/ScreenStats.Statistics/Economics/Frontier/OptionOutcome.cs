using System.Globalization;

namespace ScreenStats.Statistics.Economics.Frontier;

/// <summary>What one course of action costs and what it brings about.</summary>
public readonly record struct OptionOutcome
{
    /// <summary>Makes an outcome.</summary>
    /// <param name="cost">Its cost in one unit of money for all options, from -1e15 to 1e15; below 0 where it saves money.</param>
    /// <param name="effect">Its effect in one unit for all options, more being better, from -1e15 to 1e15; below 0 where it does harm.</param>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its domain.</exception>
    public OptionOutcome(double cost, double effect)
    {
        Guard.SignedAmount(cost);
        Guard.SignedAmount(effect);
        Cost = cost;
        Effect = effect;
    }

    /// <summary>The cost.</summary>
    public double Cost { get; }

    /// <summary>The effect; more is better.</summary>
    public double Effect { get; }

    /// <summary>Both, for debugging.</summary>
    /// <returns>Invariant text.</returns>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Effect} for {Cost}");

    /// <summary>Whether this one costs no more and does no less than another, and is better in one of the two.</summary>
    internal bool Dominates(OptionOutcome other) =>
        Cost <= other.Cost && Effect >= other.Effect && (Cost < other.Cost || Effect > other.Effect);
}
