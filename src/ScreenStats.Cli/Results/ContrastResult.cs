using System.Text.Json.Serialization;

namespace ScreenStats.Cli.Results;

/// <summary>What <c>contrast A B</c> answers.</summary>
internal sealed record ContrastResult(
    Figure First,
    Figure Second,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] ContrastItem? Difference,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] ContrastItem? Ratio,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] OddsRatioItem? OddsRatio,
    Figure FisherPValue,
    Figure FisherMidPValue,
    Figure FisherGreaterPValue,
    Figure FisherLessPValue,
    CountsItem FirstCounts,
    CountsItem SecondCounts,
    double Confidence);
