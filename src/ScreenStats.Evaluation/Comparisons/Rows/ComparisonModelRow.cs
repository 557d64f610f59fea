using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Comparisons.Rows;

/// <summary>One term of the logistic model: how many times the odds of an event are those of the level of reference, everything else alike.</summary>
/// <param name="Key">What it is found by.</param>
/// <param name="Measure">By what levels are compared.</param>
/// <param name="Basis">Which runs.</param>
/// <param name="By">What is compared.</param>
/// <param name="Term">What the term is of: what is compared, <c>period</c>, <c>kit</c>, <c>specimen</c> or <c>site</c>.</param>
/// <param name="Level">Its level.</param>
/// <param name="Odds">The ratio of odds to the level of reference, with limits.</param>
/// <param name="P">Probability of as much if the term does nothing; null where undefined.</param>
/// <param name="Remark">What must be known of it: that it is the level of reference, or that it has no bound.</param>
public sealed record ComparisonModelRow(
    string Key, ComparisonMeasure Measure, ComparisonBasis Basis, string By, string Term, string Level, EstimateFinding Odds, double? P, string Remark);
