namespace ScreenStats.Statistics.Trends.SlopeChanges;

/// <summary>The mean slope of the logit over a span of time.</summary>
/// <param name="From">Where the span begins.</param>
/// <param name="To">Where it ends.</param>
/// <param name="Slope">The sum of the segments' slopes, each times its share of the span.</param>
/// <param name="StandardError">Its standard error; it allows for the uncertain places of the changes.</param>
/// <param name="Interval">Its limits.</param>
/// <param name="Confidence">The confidence of the limits.</param>
public sealed record MeanGrowth(double From, double To, double Slope, double StandardError, Interval Interval, double Confidence);
