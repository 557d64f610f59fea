using System.Text.Json.Serialization;

namespace ScreenStats.Cli.Results.Cadence;

/// <summary>What <c>cadence</c> answers: what was asked, and one option for each way of screening.</summary>
internal sealed record CadenceResult(
    Figure Sensitivity, Figure Specificity, IReadOnlyList<double>? Window, IReadOnlyList<double>? Infectious, double Delay, Figure Incidence, Figure People,
    IReadOnlyList<CadenceItem> Options)
{
    /// <summary>The course; null where the closed forms answer.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public CourseInputs? Course { get; init; }

    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public SpreadInputs? Spread { get; init; }

    /// <summary>How it spreads where nobody is screened.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public SpreadItem? WithoutScreening { get; init; }

    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public DrawsItem? Limits { get; init; }

    /// <summary>What was taken from a program; null where none was named.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public IReadOnlyList<TakenItem>? Taken { get; init; }
}
