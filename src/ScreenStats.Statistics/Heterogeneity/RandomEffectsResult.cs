namespace ScreenStats.Statistics.Heterogeneity;

/// <summary>Several groups as a sample of a population of groups: their mean, how much they differ, and where another one would lie.</summary>
/// <param name="Groups">Groups.</param>
/// <param name="Method">How the variance between groups was estimated.</param>
/// <param name="Common">The mean weighted by the inverse of the variances, as if all groups had one figure.</param>
/// <param name="Q">Cochran's Q; null with a <see cref="Reason"/>.</param>
/// <param name="DegreesOfFreedom">Groups less one; null with a reason.</param>
/// <param name="PValue">The chance of as large a Q if all groups have one figure; null with a reason.</param>
/// <param name="BetweenVariance">The variance between groups, τ², 0 or more; null with a reason.</param>
/// <param name="BetweenVarianceLimits">Its limits by the profile of Q; null with a reason.</param>
/// <param name="ISquared">The share of all variation that lies between groups, in [0, 1]: τ² over τ² and the typical sampling variance; null with a reason.</param>
/// <param name="ISquaredFromQ">The same from Q: (Q - degrees of freedom) / Q, not below 0; null with a reason.</param>
/// <param name="HSquared">Q over its degrees of freedom; null with a reason.</param>
/// <param name="Mean">The mean of the population of groups, with normal limits.</param>
/// <param name="StandardError">The standard error of that mean; null with a reason.</param>
/// <param name="HartungKnapp">The same mean with Hartung and Knapp's limits (Student's), better with few groups.</param>
/// <param name="HartungKnappStandardError">Their standard error; null with a reason.</param>
/// <param name="Prediction">Where the true figure of another group would lie; undefined with fewer than three groups.</param>
/// <param name="Reason">Why nothing can be told of the differences; null where it can.</param>
public sealed record RandomEffectsResult(
    int Groups, BetweenVarianceMethod Method, Estimate Common, double? Q, int? DegreesOfFreedom, double? PValue, double? BetweenVariance, Interval? BetweenVarianceLimits,
    double? ISquared, double? ISquaredFromQ, double? HSquared, Estimate Mean, double? StandardError, Estimate HartungKnapp, double? HartungKnappStandardError,
    Estimate Prediction, UndefinedReason? Reason);
