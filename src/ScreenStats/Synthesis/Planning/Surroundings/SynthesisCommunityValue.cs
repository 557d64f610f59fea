namespace ScreenStats.Synthesis.Planning.Surroundings;

/// <summary>A community rate from a day on.</summary>
/// <param name="From">First day on which it holds.</param>
/// <param name="Value">The rate.</param>
/// <param name="Lower">Lower limit.</param>
/// <param name="Upper">Upper limit.</param>
public sealed record SynthesisCommunityValue(DateOnly From, double Value, double Lower, double Upper);
