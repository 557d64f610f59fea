namespace ScreenStats.Statistics.Trends.Smooths.Splines;

/// <summary>The rate of a penalised spline at one point of time.</summary>
/// <param name="Count">What was counted there.</param>
/// <param name="Link">The spline there: the logit of a proportion, the logarithm of a rate.</param>
/// <param name="LinkDeviation">Its standard deviation.</param>
/// <param name="Rate">The proportion, or the events per unit of exposure.</param>
/// <param name="Band">Its limits.</param>
public sealed record SplineRate(SplineCount Count, double Link, double LinkDeviation, double Rate, Interval Band);
