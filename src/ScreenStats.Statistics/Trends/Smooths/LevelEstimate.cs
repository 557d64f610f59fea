namespace ScreenStats.Statistics.Trends.Smooths;

/// <summary>What is known of the rate of a period.</summary>
/// <param name="LogitMean">The mean of the logit of the rate.</param>
/// <param name="LogitDeviation">The standard deviation of the logit.</param>
/// <param name="Rate">The mean of the rate, in (0, 1).</param>
/// <param name="Band">The central interval of the rate, of the confidence asked for.</param>
public readonly record struct LevelEstimate(double LogitMean, double LogitDeviation, double Rate, Interval Band);
