namespace ScreenStats.Reporting.Charts.Trends;

/// <summary>A change on a day: one that the program file names, or one that was found in the data.</summary>
/// <param name="On">The day.</param>
/// <param name="Words">What it is.</param>
/// <param name="From">Earliest day it may have been; null for a dated one.</param>
/// <param name="To">Latest day it may have been; null for a dated one.</param>
internal sealed record TrendChange(DateOnly On, string Words, DateOnly? From = null, DateOnly? To = null)
{
    /// <summary>Whether it was found in the data.</summary>
    public bool Found => From is not null || To is not null;
}
