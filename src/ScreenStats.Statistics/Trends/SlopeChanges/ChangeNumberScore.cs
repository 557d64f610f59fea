namespace ScreenStats.Statistics.Trends.SlopeChanges;

/// <summary>How well one number of changes does.</summary>
/// <param name="Number">The number of changes.</param>
/// <param name="Deviance">The deviance of the fit.</param>
/// <param name="InformationCriterion">Deviance / dispersion + (2 + 2 changes) ln(periods).</param>
/// <param name="StrictInformationCriterion">Deviance / dispersion + (2 + 3 changes) ln(periods).</param>
/// <param name="Weight">The share of exp(-criterion / 2) of all numbers, by the criterion that was asked for (the strict one with permutation tests).</param>
public sealed record ChangeNumberScore(int Number, double Deviance, double InformationCriterion, double StrictInformationCriterion, double Weight);
