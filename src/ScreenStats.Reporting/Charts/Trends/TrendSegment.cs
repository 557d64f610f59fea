namespace ScreenStats.Reporting.Charts.Trends;

/// <summary>A stretch with one slope, and its growth in words.</summary>
/// <param name="From">Its first day.</param>
/// <param name="To">Its last day.</param>
/// <param name="Words">Its growth: "+12 % a week (+4 to +21)".</param>
/// <param name="Short">The same without its limits, where there is little room; the caption then has the whole.</param>
internal sealed record TrendSegment(DateOnly From, DateOnly To, string Words, string Short);
