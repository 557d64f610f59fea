namespace ScreenStats.Evaluation.Expected;

/// <summary>A stated accuracy with the limits it has.</summary>
/// <param name="Value">The value as stated, a fraction in [0, 1].</param>
/// <param name="Lower">Lower limit; equal to the value where taken as exact.</param>
/// <param name="Upper">Upper limit; equal to the value where taken as exact.</param>
/// <param name="Successes">Successes, where stated as counts.</param>
/// <param name="Trials">Trials, where stated as counts.</param>
/// <param name="TakenAsExact">True for a bare value.</param>
public sealed record StatedFigure(double Value, double Lower, double Upper, long? Successes, long? Trials, bool TakenAsExact);
