using System.Collections.Immutable;

namespace ScreenStats.Statistics.Cadence.Spread;

/// <summary>Expected infections of a workplace day by day.</summary>
/// <param name="People">People at the workplace.</param>
/// <param name="Days">One entry for each day: what was brought in and what was passed on inside.</param>
/// <param name="Totals">Their sums.</param>
public sealed record RenewalCourse(double People, ImmutableArray<RenewalTotals> Days, RenewalTotals Totals);
