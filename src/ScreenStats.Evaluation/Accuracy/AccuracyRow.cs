using ScreenStats.Evaluation.Clusters;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Accuracy;

/// <summary>One figure of accuracy of one part of the program, on one basis.</summary>
/// <param name="Key">What tells the row from the others.</param>
/// <param name="Grouping">By what the program is broken down.</param>
/// <param name="Level">The part; empty for the whole program.</param>
/// <param name="Measure">Its word: <c>sensitivity</c>, <c>specificity</c>, <c>prevalence</c>, <c>positive-predictive-value</c> or <c>negative-predictive-value</c>.</param>
/// <param name="Basis">What it stands on.</param>
/// <param name="Figure">The figure; of a one-sided limit only the lower limit, of bounds the least and the greatest value.</param>
/// <param name="WithErrorLower">Lower end of the interval for the figure wherever between its bounds it lies; null for other bases.</param>
/// <param name="WithErrorUpper">Upper end of that interval.</param>
/// <param name="Positives">Positive runs.</param>
/// <param name="Verified">Positive runs that were confirmed or refuted.</param>
/// <param name="Negatives">Negative runs spoken of.</param>
/// <param name="Audited">Negative runs that were audited with a conclusive result.</param>
/// <param name="Missed">Audited negative runs whose confirmatory test was positive.</param>
public sealed record AccuracyRow(
    string Key, Grouping Grouping, string Level, string Measure, AccuracyBasis Basis, EstimateFinding Figure,
    double? WithErrorLower, double? WithErrorUpper, long Positives, long Verified, long Negatives, long Audited, long Missed)
{
    /// <summary>What runs are taken together in the limits: people, or sites where the variance over them is larger; null where there is no such figure.</summary>
    public ClusterLevel? Cluster { get; init; }

    /// <summary>How many of them there are; null likewise.</summary>
    public long? Clusters { get; init; }

    /// <summary>Number of sites where it is 2 to 4: too few to show how sites differ, so that is not in the limits; else null.</summary>
    public long? FewSites { get; init; }
}
