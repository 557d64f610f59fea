using System.Collections.Immutable;
using System.Text.Json.Serialization;

namespace ScreenStats.Cli.Results;

/// <summary>What <c>prevalence</c> answers.</summary>
internal sealed record PrevalenceResult(
    long Successes,
    long Trials,
    Figure Sensitivity,
    Figure Specificity,
    double Confidence,
    Figure ApparentPrevalence,
    Figure Prevalence,
    Figure PrevalenceUnclipped,
    Figure StandardError,
    ImmutableArray<IntervalItem> Intervals,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] string? Remark);
