namespace ScreenStats.Statistics.Trends.SlopeChanges;

/// <summary>The straight part of the logit between two changes.</summary>
/// <param name="From">Where it begins: the first period or a change.</param>
/// <param name="To">Where it ends: a change or the last period.</param>
/// <param name="Periods">Periods with trials in it, both ends included.</param>
/// <param name="Slope">The change of the logit per unit of time; exp(slope) is the ratio of the odds one unit apart.</param>
/// <param name="StandardError">The standard error of the slope; it allows for the uncertain places of the changes.</param>
/// <param name="Interval">The limits of the slope.</param>
public sealed record SlopeSegment(double From, double To, int Periods, double Slope, double StandardError, Interval Interval);
