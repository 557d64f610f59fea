using System.Text.Json.Serialization;

namespace ScreenStats.Cli.Results.Cadence;

/// <summary>What was taken of the spread inside.</summary>
internal sealed record SpreadInputs(
    Figure Reproduction, [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] double? Dispersion, double BroughtIn, int Days,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] double? ImmunityDays);
