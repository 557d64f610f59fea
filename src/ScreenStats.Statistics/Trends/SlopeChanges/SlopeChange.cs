namespace ScreenStats.Statistics.Trends.SlopeChanges;

/// <summary>A place at which the slope of the logit changes.</summary>
/// <param name="Time">The most likely place, in the unit of the times given.</param>
/// <param name="StandardError">Its standard error by linearisation.</param>
/// <param name="Interval">Its limits by that error.</param>
/// <param name="ProfileLower">Its lower limit by the profile likelihood; null where the counts allow the change up to the first place that could hold one.</param>
/// <param name="ProfileUpper">Its upper limit by the profile likelihood; null where the counts allow the change up to the last place that could hold one.</param>
/// <param name="Difference">The slope after it less the slope before it.</param>
/// <param name="DifferenceError">The standard error of the difference.</param>
/// <param name="DifferenceInterval">The limits of the difference.</param>
/// <remarks>The profile limits are to be shown: those by linearisation are too narrow where the change is small or lies near an end.</remarks>
public sealed record SlopeChange(
    double Time, double StandardError, Interval Interval, double? ProfileLower, double? ProfileUpper, double Difference, double DifferenceError, Interval DifferenceInterval);
