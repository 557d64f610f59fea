using System.Collections.Immutable;

namespace ScreenStats.Reporting.Charts.Trends;

/// <summary>The rate of the community around, each value until the next.</summary>
/// <param name="Words">What it is, for the legend.</param>
/// <param name="Steps">First days with the value from then on; in the unit of the words.</param>
/// <param name="Scale">What a value is multiplied by to be drawn on the axis of shares: 1 where it is a share itself.</param>
internal sealed record TrendCommunity(string Words, ImmutableArray<(DateOnly From, double Value)> Steps, double Scale = 1);
