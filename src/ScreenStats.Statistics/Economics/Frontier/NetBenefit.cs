using System.Collections.Immutable;

namespace ScreenStats.Statistics.Economics.Frontier;

/// <summary>Options compared in money, at a stated value of an effect.</summary>
/// <remarks>
/// Net monetary benefit = value times effect minus cost. Unlike a ratio it needs no denominator, adds up, and says which option is best: the one of the frontier
/// whose incremental ratio is the last not above the value. Source: Stinnett AA, Mullahy J, Med Decis Making 1998;18 (Suppl):S68-S80 (from memory).
/// </remarks>
public static class NetBenefit
{
    /// <summary>The name of the method in tables.</summary>
    public const string Method = "net-monetary-benefit";

    /// <summary>The net monetary benefit of one option.</summary>
    /// <param name="option">Its cost and effect.</param>
    /// <param name="valueOfEffect">What one effect is worth, from 0 to 1e15.</param>
    /// <returns>value times effect minus cost; below 0 where the effect is not worth its cost.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The value is outside its domain.</exception>
    public static double Of(OptionOutcome option, double valueOfEffect)
    {
        Guard.Amount(valueOfEffect);
        return (valueOfEffect * option.Effect) - option.Cost;
    }

    /// <summary>What one option is worth more than another.</summary>
    /// <param name="option">The option taken.</param>
    /// <param name="instead">The option it takes the place of.</param>
    /// <param name="valueOfEffect">What one effect is worth, from 0 to 1e15.</param>
    /// <returns>The difference of the two net benefits.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The value is outside its domain.</exception>
    public static double Incremental(OptionOutcome option, OptionOutcome instead, double valueOfEffect)
    {
        Guard.Amount(valueOfEffect);
        return (valueOfEffect * (option.Effect - instead.Effect)) - (option.Cost - instead.Cost);
    }

    /// <summary>The options with the highest net monetary benefit.</summary>
    /// <param name="options">One or more options.</param>
    /// <param name="valueOfEffect">What one effect is worth, from 0 to 1e15.</param>
    /// <returns>Their places in the list, in that order; several where they are equal.</returns>
    /// <exception cref="ArgumentException">No option.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The value is outside its domain.</exception>
    public static ImmutableArray<int> Best(IReadOnlyList<OptionOutcome> options, double valueOfEffect)
    {
        ArgumentNullException.ThrowIfNull(options);
        if (options.Count == 0) throw new ArgumentException("There must be at least one option.", nameof(options));
        double[] benefits = [.. options.Select(option => Of(option, valueOfEffect))];
        var highest = benefits.Max();
        return [.. Enumerable.Range(0, benefits.Length).Where(index => benefits[index] == highest)];
    }
}
