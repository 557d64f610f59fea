namespace ScreenStats.Reporting.Charts;

/// <summary>A point of a control chart, as the picture needs it.</summary>
/// <param name="Name">The level, where levels are side by side.</param>
/// <param name="Start">First day of the period, where it has one.</param>
/// <param name="End">Day after the last of the period.</param>
/// <param name="Value">What is plotted, in [0, 1].</param>
/// <param name="Lower">Lower limit.</param>
/// <param name="Upper">Upper limit.</param>
/// <param name="Outside">Whether it lies outside.</param>
/// <param name="InPattern">Whether it completes a pattern inside the limits.</param>
/// <param name="Incomplete">Whether it is not complete yet.</param>
internal sealed record LimitPoint(
    string Name, DateOnly Start, DateOnly End, double Value, double Lower, double Upper, bool Outside, bool InPattern = false, bool Incomplete = false)
{
    /// <summary>Whether it lies above its limits.</summary>
    public bool Above => Outside && Value > Upper;

    /// <summary>The middle of the period.</summary>
    public double Middle => (Start.DayNumber + End.DayNumber) / 2.0;
}
