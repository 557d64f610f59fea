namespace ScreenStats.Counting.Programs.Surroundings;

/// <summary>A community rate from a day on.</summary>
/// <param name="From">First day on which it holds.</param>
/// <param name="Value">The rate: a share in [0, 1], or cases in 100,000 people in a week.</param>
/// <param name="Lower">Lower 95 % limit; null where not stated.</param>
/// <param name="Upper">Upper 95 % limit; null where not stated.</param>
public sealed record CommunityValue(DateOnly From, double Value, double? Lower, double? Upper);
