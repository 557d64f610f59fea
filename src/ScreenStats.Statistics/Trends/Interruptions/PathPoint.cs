using ScreenStats.Statistics.Trends.Series;

namespace ScreenStats.Statistics.Trends.Interruptions;

/// <summary>One time of an interrupted series: as fitted, and as it would have gone on without the changes.</summary>
/// <param name="Time">The time.</param>
/// <param name="Fitted">The fitted rate (a share; on the scale of events, events per exposure) with limits for the rate itself, not for what is counted; a share that the log link takes above 1 is shown as 1.</param>
/// <param name="Unchanged">The rate without any of the changes, with limits; before the first change the same as fitted.</param>
/// <param name="Ratio">Odds or rate as fitted over those without the changes, with limits.</param>
public sealed record PathPoint(double Time, OpenEstimate Fitted, OpenEstimate Unchanged, OpenEstimate Ratio);
