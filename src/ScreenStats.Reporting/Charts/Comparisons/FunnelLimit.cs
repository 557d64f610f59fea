namespace ScreenStats.Reporting.Charts.Comparisons;

/// <summary>The limits of a funnel at one size.</summary>
/// <param name="Trials">The size, 1 or more.</param>
/// <param name="InnerLower">Lower limit of the inner pair (95 %).</param>
/// <param name="InnerUpper">Upper limit of the inner pair.</param>
/// <param name="OuterLower">Lower limit of the outer pair (99.8 %).</param>
/// <param name="OuterUpper">Upper limit of the outer pair.</param>
internal sealed record FunnelLimit(double Trials, double InnerLower, double InnerUpper, double OuterLower, double OuterUpper);
