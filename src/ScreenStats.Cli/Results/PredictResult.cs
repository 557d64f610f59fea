using System.Collections.Immutable;
using System.Text.Json.Serialization;

namespace ScreenStats.Cli.Results;

/// <summary>What <c>predict</c> answers.</summary>
internal sealed record PredictResult(
    Figure Sensitivity,
    Figure Specificity,
    Figure Prevalence,
    double Confidence,
    EstimateResult PositivePredictiveValue,
    EstimateResult NegativePredictiveValue,
    EstimateResult PositiveLikelihoodRatio,
    EstimateResult NegativeLikelihoodRatio,
    long Per,
    Figure TruePositives,
    Figure FalsePositives,
    Figure FalseNegatives,
    Figure TrueNegatives,
    ShareResult PrevalenceAtShare,
    ImmutableArray<MatchedResult> Matched,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] SeriesResult? Repeated,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] SeriesResult? Confirmed,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] IReadOnlyList<CurveResult>? Curve)
{
    /// <summary>What must be known to read the figures; null where there is nothing.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? Remark { get; init; }
}
