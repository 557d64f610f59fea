using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Comparisons.Rows;

/// <summary>Two levels against each other, first minus second.</summary>
/// <param name="Key">What it is found by.</param>
/// <param name="Measure">By what they are compared.</param>
/// <param name="Basis">Which runs.</param>
/// <param name="By">What is compared.</param>
/// <param name="Level">The first.</param>
/// <param name="Other">The second.</param>
/// <param name="Difference">The difference of their rates as counted, with Newcombe's limits of this pair alone, widened for clusters.</param>
/// <param name="P">Fisher's two-sided probability of the counts, as if all trials were independent.</param>
/// <param name="PHolm">The same adjusted for the number of pairs.</param>
/// <param name="SimultaneousLower">Lower limit of the difference that holds for all pairs at once, widened for clusters.</param>
/// <param name="SimultaneousUpper">Upper limit likewise.</param>
/// <param name="Odds">Ratio of their odds within the strata that are adjusted for, with limits that hold for all pairs at once, widened for clusters.</param>
/// <param name="OddsP">Probability of as much within the strata if they do not differ, widened for clusters; null where undefined.</param>
/// <param name="OddsPHolm">The same adjusted for the number of pairs.</param>
/// <param name="ToldApart">Whether the simultaneous limits within the strata leave out that they are alike.</param>
public sealed record ComparisonPairRow(
    string Key, ComparisonMeasure Measure, ComparisonBasis Basis, string By, string Level, string Other, EstimateFinding Difference, double? P, double? PHolm,
    double? SimultaneousLower, double? SimultaneousUpper, EstimateFinding Odds, double? OddsP, double? OddsPHolm, bool ToldApart);
