namespace ScreenStats.Statistics.LatentClass;

/// <summary>What was known of one test before the counts.</summary>
/// <param name="Sensitivity">Of its sensitivity.</param>
/// <param name="Specificity">Of its specificity.</param>
public sealed record TestPriors(BetaPrior Sensitivity, BetaPrior Specificity);
