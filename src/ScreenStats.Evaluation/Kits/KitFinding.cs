using System.Collections.Immutable;
using ScreenStats.Counting.Cubes;
using ScreenStats.Evaluation.Clusters;

namespace ScreenStats.Evaluation.Kits;

/// <summary>What was seen of one screening device.</summary>
/// <param name="Device">Its name in the program file.</param>
/// <param name="Lots">Its lots in these data, in order.</param>
/// <param name="Runs">Counted runs of its lots.</param>
/// <param name="Positivity">Positives of valid tests.</param>
/// <param name="InvalidRuns">Inconclusive and invalid of all runs.</param>
/// <param name="RefutedRate">Refuted positives of valid tests.</param>
/// <param name="PredictiveValue">Confirmed of the positives that were confirmed or refuted.</param>
public sealed record KitFinding(
    string Device, ImmutableArray<string> Lots, long Runs,
    ProportionFinding Positivity, ProportionFinding InvalidRuns, ProportionFinding RefutedRate, ProportionFinding PredictiveValue)
{
    /// <summary>The proportion of a measure.</summary>
    /// <param name="measure">Which one.</param>
    /// <returns>The proportion.</returns>
    public ProportionFinding Of(PersonMeasure measure) => measure switch
    {
        PersonMeasure.Positivity => Positivity,
        PersonMeasure.InvalidRuns => InvalidRuns,
        PersonMeasure.Refuted => RefutedRate,
        PersonMeasure.PredictiveValue => PredictiveValue,
        _ => throw new ArgumentOutOfRangeException(nameof(measure), measure, "Not a member of the enumeration."),
    };
}
