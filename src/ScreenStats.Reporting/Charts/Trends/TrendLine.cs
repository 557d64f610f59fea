using System.Collections.Immutable;

namespace ScreenStats.Reporting.Charts.Trends;

/// <summary>A smooth line with its band.</summary>
/// <param name="Points">Days, as day numbers, in rising order, with value and limits.</param>
internal sealed record TrendLine(ImmutableArray<(double Day, double Value, double Lower, double Upper)> Points);
