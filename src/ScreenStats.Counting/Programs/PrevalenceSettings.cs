namespace ScreenStats.Counting.Programs;

/// <summary>A prevalence from outside the program.</summary>
/// <param name="Value">Prevalence, in [0, 1].</param>
/// <param name="Lower">Lower limit; null where not stated.</param>
/// <param name="Upper">Upper limit; null where not stated.</param>
/// <param name="Source">Where it comes from.</param>
public sealed record PrevalenceSettings(double Value, double? Lower, double? Upper, string Source);
