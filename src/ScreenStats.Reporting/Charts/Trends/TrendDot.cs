namespace ScreenStats.Reporting.Charts.Trends;

/// <summary>A period of a trend.</summary>
/// <param name="Start">Its first day.</param>
/// <param name="End">The day after its last.</param>
/// <param name="Value">Its share, in [0, 1].</param>
/// <param name="Lower">Lower limit.</param>
/// <param name="Upper">Upper limit.</param>
/// <param name="Complete">Whether it is over and all of it is in the data.</param>
/// <param name="Pending">How many still wait for a confirmatory result.</param>
internal sealed record TrendDot(DateOnly Start, DateOnly End, double Value, double Lower, double Upper, bool Complete = true, long Pending = 0)
{
    /// <summary>The middle of the period.</summary>
    public double Middle => (Start.DayNumber + End.DayNumber) / 2.0;

    /// <summary>Whether it is not to be read like the others.</summary>
    public bool Open => !Complete || Pending > 0;
}
