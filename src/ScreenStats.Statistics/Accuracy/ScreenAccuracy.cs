namespace ScreenStats.Statistics.Accuracy;

/// <summary>Sensitivity and specificity of one screen, or of several taken together.</summary>
/// <param name="Sensitivity">The sensitivity.</param>
/// <param name="Specificity">The specificity.</param>
public sealed record ScreenAccuracy(AccuracyStatement Sensitivity, AccuracyStatement Specificity);
