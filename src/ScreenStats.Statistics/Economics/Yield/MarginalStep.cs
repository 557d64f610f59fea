using ScreenStats.Statistics.Economics.Frontier;

namespace ScreenStats.Statistics.Economics.Yield;

/// <summary>One step of doing more: what it costs for each effect on average, and what the step alone does.</summary>
public sealed record MarginalStep
{
    internal MarginalStep(int index, OptionOutcome outcome, Estimate average, Estimate marginal)
    {
        Index = index;
        Outcome = outcome;
        AverageCost = average;
        MarginalCost = marginal;
    }

    /// <summary>The place of the step in the list given, from 0.</summary>
    public int Index { get; }

    /// <summary>Cost and effect up to and with the step.</summary>
    public OptionOutcome Outcome { get; }

    /// <summary>All cost over all effect.</summary>
    public Estimate AverageCost { get; }

    /// <summary>What the step adds in cost over what it adds in effect.</summary>
    public Estimate MarginalCost { get; }
}
