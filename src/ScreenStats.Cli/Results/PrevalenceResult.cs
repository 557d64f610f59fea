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
    EstimateResult Apparent,
    ImmutableArray<CorrectedResult> Corrected,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] PosteriorResult? PosteriorSensitivity,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] PosteriorResult? PosteriorSpecificity,
    ImmutableArray<MatchedResult> Matched,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] string? Remark);
