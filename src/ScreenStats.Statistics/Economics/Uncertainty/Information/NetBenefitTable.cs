using System.Collections.Immutable;

namespace ScreenStats.Statistics.Economics.Uncertainty.Information;

/// <summary>The net benefit of each option in each possible state of the world: drawn, or listed with its probability.</summary>
public sealed class NetBenefitTable
{
    private NetBenefitTable(ImmutableArray<ImmutableArray<double>> rows, ImmutableArray<double>? weights)
    {
        Rows = rows;
        Weights = weights;
        Means = [.. rows.Select(row => WeightedMean.Of(row, weights))];
        var best = 0;
        for (var option = 1; option < rows.Length; option++)
        {
            if (Means[option] > Means[best]) best = option;
        }

        Best = best;
    }

    /// <summary>How many options.</summary>
    public int Options => Rows.Length;

    /// <summary>How many draws or states.</summary>
    public int Draws => Rows[0].Length;

    /// <summary>The probability of each state, adding up to 1; null for draws, which all weigh the same.</summary>
    public ImmutableArray<double>? Weights { get; }

    /// <summary>The mean net benefit of each option.</summary>
    public ImmutableArray<double> Means { get; }

    /// <summary>The option with the highest mean, by its place; the first of those that are equal.</summary>
    public int Best { get; }

    /// <summary>For each option its net benefits.</summary>
    internal ImmutableArray<ImmutableArray<double>> Rows { get; }

    /// <summary>A table from net benefits.</summary>
    /// <param name="netBenefits">For each of one or more options its net benefit in each draw or state, from -1e30 to 1e30, in the same order.</param>
    /// <param name="weights">The probability of each state, 0 or more, of any sum above 0; null for draws.</param>
    /// <returns>The table.</returns>
    /// <exception cref="ArgumentException">No option, no draw, or rows of different length.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its domain.</exception>
    public static NetBenefitTable Of(IReadOnlyList<IReadOnlyList<double>> netBenefits, IReadOnlyList<double>? weights = null)
    {
        ArgumentNullException.ThrowIfNull(netBenefits);
        if (netBenefits.Count == 0 || netBenefits[0].Count == 0) throw new ArgumentException("There must be at least one option and one draw.", nameof(netBenefits));
        foreach (var row in netBenefits)
        {
            if (row.Count != netBenefits[0].Count) throw new ArgumentException("Each option must have a net benefit in each draw.", nameof(netBenefits));
            foreach (var value in row)
            {
                if (!(Math.Abs(value) <= 1e30)) throw new ArgumentOutOfRangeException(nameof(netBenefits), value, "A net benefit must be a number from -1e30 to 1e30.");
            }
        }

        return new NetBenefitTable([.. netBenefits.Select(row => row.ToImmutableArray())], Scaled(weights, netBenefits[0].Count));
    }

    /// <summary>A table from costs and effects.</summary>
    /// <param name="options">The draws of one or more options, all of the same length.</param>
    /// <param name="valueOfEffect">What one effect is worth, from 0 to 1e15.</param>
    /// <returns>The table of value times effect minus cost.</returns>
    /// <exception cref="ArgumentException">No option, or draws of different length.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The value is outside its domain.</exception>
    public static NetBenefitTable Of(IReadOnlyList<OptionDraws> options, double valueOfEffect)
    {
        ArgumentNullException.ThrowIfNull(options);
        Guard.Amount(valueOfEffect);
        return Of([.. options.Select(option => option.Costs.Zip(option.Effects, (cost, effect) => (valueOfEffect * effect) - cost).ToArray())]);
    }

    private static ImmutableArray<double>? Scaled(IReadOnlyList<double>? weights, int states)
    {
        if (weights is null) return null;
        if (weights.Count != states) throw new ArgumentException("There must be a weight for each state.", nameof(weights));
        foreach (var weight in weights) Guard.Amount(weight, nameof(weights));
        var sum = weights.Sum();
        if (!(sum > 0)) throw new ArgumentOutOfRangeException(nameof(weights), sum, "The weights must not all be 0.");
        return [.. weights.Select(weight => weight / sum)];
    }
}
