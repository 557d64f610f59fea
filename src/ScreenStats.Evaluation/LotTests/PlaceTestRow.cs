using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.LotTests;

/// <summary>One lot, or site, compared by one measure with the others of the same strata.</summary>
/// <param name="Key">Name and measure joined by a vertical bar.</param>
/// <param name="Place">Name of the lot or site.</param>
/// <param name="Measure"><c>refuted</c>, <c>invalid</c>, <c>cases</c> or <c>failed-controls</c>.</param>
/// <param name="Direction"><c>more</c> where too many are looked for, <c>fewer</c> where too few.</param>
/// <param name="Strata">Strata that can tell it from others: used beside another, with an event.</param>
/// <param name="Observed">Its events there.</param>
/// <param name="Expected">Its events there if all were alike.</param>
/// <param name="Ratio">Its rate as a multiple of the others' in the same strata; its limits hold the variance between strata.</param>
/// <param name="Overdispersion">How many times that of chance the variance is that the limits hold, at least 1.</param>
/// <param name="P">Exact one-sided chance of at least (for <c>fewer</c>: at most) its events; null where there was nothing to compare.</param>
/// <param name="PHolm">The same adjusted for the number compared (Holm); null likewise.</param>
/// <param name="PUndefined">Why there was nothing to compare; null where there was.</param>
/// <param name="Material">Found by an excess, and the lower limit of the ratio is at least 1.5.</param>
/// <param name="LowYield">Found by too few cases or by failed positive controls, with limits of the ratio wholly on that side of 1.</param>
/// <param name="Rate">Its rate at the program's mix of sites (of sites: of lots), drawn towards the others' as far as its counts are few.</param>
/// <param name="ChanceAboveTwice">The probability that this rate is more than twice the program's; null where the rate is.</param>
/// <param name="ChanceAboveTwiceUndefined">Why there is none; null where there is one.</param>
public sealed record PlaceTestRow(
    string Key, string Place, string Measure, string Direction, int Strata, long Observed, double Expected, EstimateFinding Ratio, double Overdispersion,
    double? P, double? PHolm, string? PUndefined, bool Material, bool LowYield, EstimateFinding Rate, double? ChanceAboveTwice, string? ChanceAboveTwiceUndefined);
