using ScreenStats.Counting.Programs.Cadence;

namespace ScreenStats.Counting.Programs.Costs;

/// <summary>One line of a rule of frequency: from which positivity of the last period on people are screened how often.</summary>
/// <param name="Above">The positivity above which it holds, at least 0 and below 1 and higher than that of the line before; null in the first line.</param>
/// <param name="Option">How people are then screened: more often than in the line before.</param>
public sealed record FrequencyRuleSettings(double? Above, CadenceOptionSettings Option);
