using System.Text.Json.Serialization;

namespace ScreenStats.Evaluation.WhatIf;

/// <summary>What would be if prevalence, accuracy or the interval between screens were others: grids of the library's figures for the page to look up.</summary>
/// <param name="Positive">What a positive and a negative would be worth.</param>
/// <param name="Interval">What screening every so many days would give.</param>
public sealed record WhatIfFindings(WhatIfPositiveFindings Positive, WhatIfIntervalFindings Interval)
{
    /// <summary>Whether nothing in it comes from the data: so it is where small counts are hidden.</summary>
    [JsonIgnore]
    public required bool OnlyStated { get; init; }
}
