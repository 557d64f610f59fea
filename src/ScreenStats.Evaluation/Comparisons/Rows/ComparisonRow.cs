using ScreenStats.Evaluation.Clusters;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Comparisons.Rows;

/// <summary>One level (a site) by one measure and basis: as counted, and as it would be at the program's mix.</summary>
/// <param name="Key">What it is found by.</param>
/// <param name="Measure">By what it is compared.</param>
/// <param name="Basis">Which runs.</param>
/// <param name="By">What is compared: <c>site</c>, <c>operator</c>, <c>kit</c>, <c>specimen</c> or <c>region</c>.</param>
/// <param name="Level">Name of the level.</param>
/// <param name="Share">Its rate as counted.</param>
/// <param name="Expected">Events it would have at the program's rate in each of its strata; null where undefined.</param>
/// <param name="Ratio">Its events over those expected.</param>
/// <param name="Standardised">Its rate if its strata were as large as the program's (direct standardisation).</param>
/// <param name="Adjusted">Its rate at the program's mix by the model, drawn towards the others' as far as its counts are few.</param>
/// <param name="Rank">Its place by that rate; null where there is none.</param>
/// <param name="Place">Where it lies in the funnel.</param>
public sealed record ComparisonRow(
    string Key, ComparisonMeasure Measure, ComparisonBasis Basis, string By, string Level, ProportionFinding Share, double? Expected, EstimateFinding Ratio,
    EstimateFinding Standardised, EstimateFinding Adjusted, ComparisonRank? Rank, ComparisonPlace Place);
