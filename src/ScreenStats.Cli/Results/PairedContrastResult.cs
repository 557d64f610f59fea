using System.Text.Json.Serialization;

namespace ScreenStats.Cli.Results;

/// <summary>What <c>contrast --paired</c> answers.</summary>
internal sealed record PairedContrastResult(
    Figure First,
    Figure Second,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] ContrastItem? Difference,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] ContrastItem? OddsRatio,
    Figure McNemarPValue,
    Figure McNemarMidPValue,
    Figure McNemarGreaterPValue,
    Figure McNemarLessPValue,
    long Both,
    long FirstOnly,
    long SecondOnly,
    long Neither,
    double Confidence);
