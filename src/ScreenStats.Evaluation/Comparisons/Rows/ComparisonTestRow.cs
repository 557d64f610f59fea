namespace ScreenStats.Evaluation.Comparisons.Rows;

/// <summary>One figure that says whether, or by how much, the levels differ as a whole.</summary>
/// <param name="Key">What it is found by.</param>
/// <param name="Measure">By what levels are compared.</param>
/// <param name="Basis">Which runs.</param>
/// <param name="By">What is compared.</param>
/// <param name="Test">Which figure, for instance <c>chi-square</c> or <c>between-variance-reml</c>.</param>
/// <param name="Statistic">The statistic or the figure; null where undefined.</param>
/// <param name="Lower">Its lower limit, where it has limits.</param>
/// <param name="Upper">Its upper limit, where it has limits.</param>
/// <param name="DegreesOfFreedom">Degrees of freedom, where it has them.</param>
/// <param name="P">Probability of as much if no level differs, where it is a test; null where undefined.</param>
/// <param name="Undefined">Why there is no figure; null where there is one.</param>
/// <param name="Method">The method, by its name in the catalogue.</param>
/// <param name="Remark">What must be known of it; empty for nothing.</param>
public sealed record ComparisonTestRow(
    string Key, ComparisonMeasure Measure, ComparisonBasis Basis, string By, string Test, double? Statistic, double? Lower, double? Upper, int? DegreesOfFreedom, double? P,
    string? Undefined, string Method, string Remark);
