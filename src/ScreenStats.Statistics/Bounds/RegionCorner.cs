namespace ScreenStats.Statistics.Bounds;

/// <summary>One corner of the joint region: all five figures at once where both unknown numbers are at an end.</summary>
/// <param name="InfectedPositives">How many positive runs are truly infected there; a real number where the confirmatory test errs.</param>
/// <param name="InfectedNegatives">How many negative runs are truly infected there.</param>
/// <param name="Sensitivity">The sensitivity there; null where nobody is infected.</param>
/// <param name="Specificity">The specificity there; null where everybody is infected.</param>
/// <param name="Prevalence">The prevalence there; null without runs.</param>
/// <param name="PositivePredictiveValue">The positive predictive value there; null without positive runs.</param>
/// <param name="NegativePredictiveValue">The negative predictive value there; null without negative runs.</param>
public sealed record RegionCorner(
    double InfectedPositives, double InfectedNegatives, double? Sensitivity, double? Specificity, double? Prevalence,
    double? PositivePredictiveValue, double? NegativePredictiveValue);
