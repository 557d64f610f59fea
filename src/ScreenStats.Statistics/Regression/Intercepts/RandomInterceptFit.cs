namespace ScreenStats.Statistics.Regression.Intercepts;

/// <summary>A logistic regression whose groups are drawn from one normal distribution on the logit scale.</summary>
/// <param name="Groups">Groups with trials.</param>
/// <param name="Coefficients">The constant and the coefficients of the terms; empty with a reason other than that the groups are all alike.</param>
/// <param name="Intervals">The limits of each coefficient.</param>
/// <param name="StandardErrors">The standard error of each coefficient, from the observed information.</param>
/// <param name="Covariance">The covariance of the coefficients and, last, of the logarithm of the standard deviation (0 where the groups are all alike).</param>
/// <param name="Variance">The variance between groups on the logit scale: 0 where the groups are all alike; null with another reason.</param>
/// <param name="StandardDeviation">Its root with limits on the logarithmic scale; undefined with a reason.</param>
/// <param name="LogLikelihood">The logarithm of the marginal likelihood, binomial coefficients included; null with a reason.</param>
/// <param name="Nodes">Nodes of the quadrature.</param>
/// <param name="Effects">One for each group with trials, in the order of the groups.</param>
/// <param name="Reason">Why there is no fit, or that the groups are all alike; else null.</param>
public sealed record RandomInterceptFit(
    int Groups, IReadOnlyList<double> Coefficients, IReadOnlyList<Interval> Intervals, IReadOnlyList<double> StandardErrors, IReadOnlyList<IReadOnlyList<double>> Covariance,
    double? Variance, Estimate StandardDeviation, double? LogLikelihood, int Nodes, IReadOnlyList<GroupEffect> Effects, UndefinedReason? Reason);
