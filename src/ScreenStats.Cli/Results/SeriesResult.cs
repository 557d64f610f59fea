using System.Text.Json.Serialization;

namespace ScreenStats.Cli.Results;

/// <summary>Several tests of one person taken together, as if each erred by itself.</summary>
internal sealed record SeriesResult(
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] int? Times,
    string Rule,
    EstimateResult Sensitivity,
    EstimateResult Specificity,
    EstimateResult PositivePredictiveValue,
    EstimateResult NegativePredictiveValue,
    Figure TruePositives,
    Figure FalsePositives,
    Figure FalseNegatives,
    Figure TrueNegatives,
    string Caution);
