using System.Text.Json.Serialization;

namespace ScreenStats.Cli.Results;

/// <summary>One interval of a result.</summary>
internal sealed record IntervalItem(
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] string? Measure, string Method, Figure Lower, Figure Upper,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] string? Note = null);
