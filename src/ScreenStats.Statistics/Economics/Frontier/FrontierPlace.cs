using System.Collections.Immutable;

namespace ScreenStats.Statistics.Economics.Frontier;

/// <summary>One option among others: on the frontier, or by which of them it is dominated.</summary>
public sealed record FrontierPlace
{
    internal FrontierPlace(int index, OptionOutcome outcome, OptionStanding standing, ImmutableArray<int> dominatedBy)
    {
        Index = index;
        Outcome = outcome;
        Standing = standing;
        DominatedBy = dominatedBy;
    }

    /// <summary>The place of the option in the list given, from 0.</summary>
    public int Index { get; }

    /// <summary>Its cost and effect.</summary>
    public OptionOutcome Outcome { get; }

    /// <summary>Where it stands.</summary>
    public OptionStanding Standing { get; }

    /// <summary>
    /// The options that dominate it, by their places in the list, in that order: strictly, all that do; extendedly, the two neighbours on the
    /// frontier whose mix does; the same as an earlier one, that one. Empty on the frontier.
    /// </summary>
    public ImmutableArray<int> DominatedBy { get; }

    /// <summary>Of an extendedly dominated option: the share of the dearer neighbour in the mix that does as much as it.</summary>
    public double? ShareOfDearer { get; internal init; }

    /// <summary>Of an extendedly dominated option: how much less that mix costs; 0 where that is lost in rounding.</summary>
    public double? MixSaves { get; internal init; }

    /// <summary>On the frontier: the place of the next cheaper option on it; null at the first and off the frontier.</summary>
    public int? Previous { get; internal init; }

    /// <summary>On the frontier: what one more effect costs against <see cref="Previous"/>; undefined at the first and off the frontier.</summary>
    public required Estimate IncrementalRatio { get; init; }

    /// <summary>On the frontier: the lowest value of an effect, 0 or more, at which nothing does better. Null off the frontier, and where it is too large to compute.</summary>
    public double? BestFrom { get; internal init; }

    /// <summary>On the frontier: the highest such value; null where there is none or it is too large to compute, and off the frontier.</summary>
    public double? BestTo { get; internal init; }
}
