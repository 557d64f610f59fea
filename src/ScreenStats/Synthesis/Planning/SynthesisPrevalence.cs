namespace ScreenStats.Synthesis.Planning;

/// <summary>The external prevalence the program file states.</summary>
/// <param name="Value">Prevalence, in [0, 1].</param>
/// <param name="Lower">Lower limit.</param>
/// <param name="Upper">Upper limit.</param>
/// <param name="Source">Where it comes from.</param>
public sealed record SynthesisPrevalence(double Value, double Lower, double Upper, string Source);
