namespace ScreenStats.Evaluation.LotTests;

/// <summary>The lots, or sites, that were compared by one measure.</summary>
/// <param name="Measure"><c>refuted</c>, <c>invalid</c>, <c>cases</c> or <c>failed-controls</c>.</param>
/// <param name="Compared">How many could be compared.</param>
/// <param name="Places">How many there are.</param>
/// <param name="ErrorRate">The chance of finding any wrongly, where runs are independent.</param>
/// <param name="Overdispersion">How many times that of chance the variance is that the limits of ratios hold, at least 1.</param>
/// <param name="OverdispersionFrom">Where that comes from: <c>strata</c> or <c>persons</c>; null where it is 1.</param>
/// <param name="MaterialFrom">The ratio that the lower limit must reach for an excess to be material.</param>
public sealed record PlaceTestFamily(
    string Measure, int Compared, int Places, double ErrorRate, double Overdispersion, string? OverdispersionFrom, double MaterialFrom);
