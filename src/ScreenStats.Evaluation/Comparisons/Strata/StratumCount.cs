namespace ScreenStats.Evaluation.Comparisons.Strata;

/// <summary>Trials and events of one level in one stratum.</summary>
/// <param name="Stratum">Number of the stratum.</param>
/// <param name="Trials">Trials, 1 or more.</param>
/// <param name="Events">Events.</param>
internal readonly record struct StratumCount(int Stratum, long Trials, long Events);
