using ScreenStats.Statistics.Heterogeneity;

namespace ScreenStats.Statistics.Funnels;

/// <summary>One group of a funnel.</summary>
/// <param name="Index">Its place in the list, from 0.</param>
/// <param name="Group">Its counts.</param>
/// <param name="Score">Its distance from the target in standard errors of chance alone; null with a <see cref="Reason"/>.</param>
/// <param name="WinsorisedScore">The score, drawn in to the winsorising limits; null with a reason.</param>
/// <param name="MultiplicativeScore">The score over the root of the overdispersion; null with a reason.</param>
/// <param name="AdditiveScore">The distance in standard errors that include the variance between groups; null with a reason.</param>
/// <param name="Inner">Where it lies against the inner limits of the funnel's model; null with a reason.</param>
/// <param name="Outer">Where it lies against the outer limits of the funnel's model; null with a reason.</param>
/// <param name="Reason">Why it cannot be placed; null where it can.</param>
public sealed record FunnelPoint(
    int Index, GroupCount Group, double? Score, double? WinsorisedScore, double? MultiplicativeScore, double? AdditiveScore, FunnelStanding? Inner, FunnelStanding? Outer,
    UndefinedReason? Reason);
