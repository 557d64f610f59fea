namespace ScreenStats.Statistics.Regression.Intercepts;

/// <summary>What is known of one group of a random-intercept logistic regression.</summary>
/// <param name="Group">The group.</param>
/// <param name="Events">Its events.</param>
/// <param name="Trials">Its trials.</param>
/// <param name="Mode">The most likely distance of its logit from that of the terms; null where the groups are all alike.</param>
/// <param name="Mean">The mean of that distance given the counts; with one node the mode.</param>
/// <param name="StandardDeviation">The standard deviation of that distance given the counts and the coefficients.</param>
/// <param name="Rate">
/// The rate of the group if its rows were those of all groups together: shrunken and adjusted, with limits that include the uncertainty of the coefficients.
/// </param>
public sealed record GroupEffect(int Group, double Events, double Trials, double? Mode, double? Mean, double? StandardDeviation, Estimate Rate);
