using System.Collections.Immutable;
using ScreenStats.Statistics.Economics.Frontier;

namespace ScreenStats.Statistics.Economics.Yield;

/// <summary>Doing more step by step: the marginal cost of each step beside the average of all.</summary>
/// <remarks>
/// The average stays low long after a further step buys next to nothing: a sixth stool test for everybody cost 2,451 for each case on average and 47 million for the case it added. Decide on the
/// marginal cost. Source: Neuhauser D, Lewicki AM, N Engl J Med 1975;293:226-228 (from memory).
/// </remarks>
public static class MarginalCost
{
    /// <summary>The name of the method in tables.</summary>
    public const string Method = "marginal-cost";

    /// <summary>Works the steps out.</summary>
    /// <param name="steps">Cost and effect up to and with each step, in the order in which more is done; the first is compared with doing nothing, at no cost and no effect.</param>
    /// <returns>One for each, in the order given; average undefined without an effect, marginal as <see cref="CostEffectivenessFrontier.Ratio"/>.</returns>
    public static ImmutableArray<MarginalStep> Of(IReadOnlyList<OptionOutcome> steps)
    {
        ArgumentNullException.ThrowIfNull(steps);
        return
        [
            .. steps.Select((step, index) =>
            {
                var before = index == 0 ? new OptionOutcome(0, 0) : steps[index - 1];
                return new MarginalStep(index, step, Average(step), CostEffectivenessFrontier.Ratio(before, step));
            }),
        ];
    }

    private static Estimate Average(OptionOutcome step)
    {
        if (step.Effect <= 0) return Estimate.Undefined(UndefinedReason.NoEffect);
        var average = step.Cost / step.Effect;
        return double.IsFinite(average) ? Estimate.Point(average, Method) : Estimate.Undefined(UndefinedReason.TooLarge);
    }
}
