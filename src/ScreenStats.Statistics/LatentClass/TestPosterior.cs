namespace ScreenStats.Statistics.LatentClass;

/// <summary>What the posterior says of one test.</summary>
/// <param name="Sensitivity">Of its sensitivity.</param>
/// <param name="Specificity">Of its specificity.</param>
public sealed record TestPosterior(PosteriorSummary Sensitivity, PosteriorSummary Specificity);
