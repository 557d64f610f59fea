using System.Text.Json.Serialization;
using ScreenStats.Evaluation.Methods;

namespace ScreenStats.Evaluation.Comparisons.Rows;

/// <summary>The limits of the funnel at one size.</summary>
/// <param name="Key">What it is found by.</param>
/// <param name="Measure">By what levels are compared.</param>
/// <param name="Basis">Which runs.</param>
/// <param name="By">What is compared.</param>
/// <param name="Trials">The size.</param>
/// <param name="Centre">The program's rate, around which the funnel stands.</param>
/// <param name="Lower95">Lower inner limit.</param>
/// <param name="Upper95">Upper inner limit.</param>
/// <param name="Lower998">Lower outer limit.</param>
/// <param name="Upper998">Upper outer limit.</param>
/// <param name="Model">What the limits allow for, by the name of a method: chance alone (widened for clusters), or what levels usually differ by too.</param>
public sealed record ComparisonFunnelRow(
    string Key, ComparisonMeasure Measure, ComparisonBasis Basis, string By, long Trials, double Centre, double Lower95, double Upper95, double Lower998, double Upper998, string Model)
{
    /// <summary>Whether the limits allow for what levels usually differ by, beyond chance.</summary>
    [JsonIgnore]
    public bool AllowsForUsualDifferences => Model == MethodNames.FunnelAdditive;
}
