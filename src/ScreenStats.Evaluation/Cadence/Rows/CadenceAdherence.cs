using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Cadence.Rows;

/// <summary>What was planned against what was done.</summary>
/// <param name="Measure">
/// <c>days-between-screens</c>, <c>screens</c>, <c>followed-up-positives</c>, <c>detection</c>, <c>share-removed</c> or <c>infectious-days-removed</c>.
/// </param>
/// <param name="Planned">As planned.</param>
/// <param name="Observed">As done.</param>
/// <param name="Share">The second divided by the first.</param>
/// <param name="Unit">In what both are measured, in words.</param>
public sealed record CadenceAdherence(string Measure, EstimateFinding Planned, EstimateFinding Observed, EstimateFinding Share, string Unit);
