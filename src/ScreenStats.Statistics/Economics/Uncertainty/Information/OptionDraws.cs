using System.Collections.Immutable;
using ScreenStats.Statistics.Economics.Frontier;

namespace ScreenStats.Statistics.Economics.Uncertainty.Information;

/// <summary>Costs and effects of one option, draw by draw.</summary>
public sealed class OptionDraws
{
    /// <summary>Makes the draws of an option.</summary>
    /// <param name="costs">Its cost in each draw, from -1e15 to 1e15; at least one.</param>
    /// <param name="effects">Its effect in the same draws, from -1e15 to 1e15.</param>
    /// <exception cref="ArgumentException">No draw, or not as many effects as costs.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its domain.</exception>
    public OptionDraws(IReadOnlyList<double> costs, IReadOnlyList<double> effects)
    {
        ArgumentNullException.ThrowIfNull(costs);
        ArgumentNullException.ThrowIfNull(effects);
        if (costs.Count == 0) throw new ArgumentException("There must be at least one draw.", nameof(costs));
        if (effects.Count != costs.Count) throw new ArgumentException("There must be as many effects as costs.", nameof(effects));
        foreach (var cost in costs) Guard.SignedAmount(cost, nameof(costs));
        foreach (var effect in effects) Guard.SignedAmount(effect, nameof(effects));
        Costs = [.. costs];
        Effects = [.. effects];
    }

    /// <summary>The cost in each draw.</summary>
    public ImmutableArray<double> Costs { get; }

    /// <summary>The effect in each draw.</summary>
    public ImmutableArray<double> Effects { get; }

    /// <summary>Mean cost and mean effect: with every draw the same, exactly that draw.</summary>
    public OptionOutcome Mean => new(WeightedMean.Of(Costs), WeightedMean.Of(Effects));
}
