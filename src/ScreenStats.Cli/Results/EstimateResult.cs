using System.Text.Json.Serialization;
using ScreenStats.Statistics;
using ScreenStats.Statistics.Accuracy;

namespace ScreenStats.Cli.Results;

/// <summary>A figure with its limits and the method that made them.</summary>
internal sealed record EstimateResult(
    Figure Estimate, Figure Lower, Figure Upper, [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] string? Method)
{
    private const string AllExact = "every input was taken as exact";

    public static EstimateResult Of(Estimate estimate)
    {
        var why = estimate.Reason?.Describe() ?? AllExact;
        return new(Figure.Of(estimate.Value, why), Figure.Of(estimate.Lower, why), Figure.Of(estimate.Upper, why), estimate.Method);
    }

    /// <summary>A stated or combined accuracy with its own limits.</summary>
    public static EstimateResult Of(AccuracyStatement statement, double confidence)
    {
        if (statement.Variance == 0) return Of(Statistics.Estimate.Point(statement.Value, PredictiveValue.ExactInputsMethod));
        var limits = statement.IntervalAt(confidence);
        return new(Figure.Of(statement.Value), Figure.Of(limits.Lower), Figure.Of(limits.Upper),
            statement.Kind == AccuracyKind.Combined ? PredictiveValue.LogitMethod : null);
    }
}
