using System.Text.Json.Serialization;
using ScreenStats.Cli.Commands.Cadence;
using ScreenStats.Statistics.Cadence.Intervals;

namespace ScreenStats.Cli.Results.Cadence;

/// <summary>One way of screening: gain per infection, burden per person, and both for everybody.</summary>
internal sealed record CadenceItem(
    double EveryDays, Figure DetectionProbability, Figure InfectiousDaysRemoved, Figure FractionRemoved, double ScreensPerPersonYear,
    Figure FalsePositivesPerPersonYear, Figure AnyFalsePositivePerYear, Figure TruePositivesPerYear, Figure FalsePositivesPerYear, Figure PositivePredictiveValue)
{
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public IReadOnlyList<string>? Weekdays { get; init; }

    /// <summary>True for the gaps as they were; null for a plan.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public bool? AsDone { get; init; }

    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public CourseItem? Course { get; init; }

    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public SpreadItem? Spread { get; init; }

    public static CadenceItem Of(CadenceWay way, CadenceOption option) => new(
        way.IsRegular ? way.EveryDays : option.EveryDays, Figure.Of(option.DetectionProbability), Figure.Of(option.InfectiousDaysRemoved), Figure.Of(option.FractionRemoved), option.ScreensPerPersonYear,
        Figure.Of(option.FalsePositivesPerPersonYear), Figure.Of(option.AnyFalsePositivePerYear), Figure.Of(option.TruePositivesPerYear), Figure.Of(option.FalsePositivesPerYear),
        Figure.Of(option.PositivePredictiveValue))
    {
        Weekdays = way.Weekdays.IsEmpty ? null : [.. way.Weekdays.Select(day => day.ToString())],
        AsDone = way.Gaps.IsEmpty ? null : true,
    };
}
