namespace ScreenStats.Statistics.Regression;

/// <summary>A logistic regression of grouped counts.</summary>
/// <param name="Rows">Rows with trials.</param>
/// <param name="Coefficients">The coefficients, the constant first where there is one; empty with a <see cref="Reason"/>.</param>
/// <param name="Intervals">The limits of each coefficient; empty with a reason.</param>
/// <param name="StandardErrors">The standard error of each coefficient; empty with a reason.</param>
/// <param name="Covariance">The covariance of the coefficients, row by row; empty with a reason.</param>
/// <param name="Fitted">The rate of each row given, also of those without trials; empty with a reason.</param>
/// <param name="LogLikelihood">The logarithm of the likelihood, binomial coefficients included; null with a reason.</param>
/// <param name="Deviance">Twice the distance to the likelihood of a model that fits each row; null with a reason.</param>
/// <param name="Pearson">Pearson's statistic; null with a reason.</param>
/// <param name="DegreesOfFreedom">Rows with trials less coefficients; null with a reason.</param>
/// <param name="Dispersion">Pearson's statistic over its degrees of freedom; null with a reason or without degrees of freedom.</param>
/// <param name="Separation">Whether the terms tell events from the others without exception.</param>
/// <param name="UnboundedTerms">The places of the coefficients without a bound, in the order of the coefficients.</param>
/// <param name="Reason">Why there is no fit; null where there is one.</param>
public sealed record LogisticFit(
    int Rows, IReadOnlyList<double> Coefficients, IReadOnlyList<Interval> Intervals, IReadOnlyList<double> StandardErrors, IReadOnlyList<IReadOnlyList<double>> Covariance,
    IReadOnlyList<double> Fitted, double? LogLikelihood, double? Deviance, double? Pearson, int? DegreesOfFreedom, double? Dispersion, SeparationKind Separation,
    IReadOnlyList<int> UnboundedTerms, UndefinedReason? Reason)
{
    /// <summary>The deviance of a model with a constant only (without a constant: of even odds); null with a reason.</summary>
    public double? NullDeviance { get; init; }

    /// <summary>Akaike's criterion: twice the number of coefficients less twice the logarithm of the likelihood; null with a reason.</summary>
    public double? Akaike => (2 * Coefficients.Count) - (2 * LogLikelihood);
}
