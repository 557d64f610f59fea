namespace ScreenStats.Statistics.Regression.Rates;

/// <summary>A regression whose terms multiply a rate.</summary>
/// <param name="Rows">Rows with trials or exposure.</param>
/// <param name="Coefficients">The coefficients (logarithms of ratios of rates), the constant first where there is one; empty with a <see cref="Reason"/>.</param>
/// <param name="Intervals">The limits of each coefficient; empty with a reason.</param>
/// <param name="StandardErrors">The standard error of each coefficient; empty with a reason.</param>
/// <param name="Covariance">The covariance of the coefficients, row by row; empty with a reason.</param>
/// <param name="Fitted">The rate of each row given, also of those without trials or exposure; empty with a reason.</param>
/// <param name="LogLikelihood">The logarithm of the likelihood with all its constants; null with a reason.</param>
/// <param name="Deviance">Twice the distance to the likelihood of a model that fits each row; null with a reason.</param>
/// <param name="NullDeviance">The deviance of a model with a constant only; null with a reason, or where the model has no constant.</param>
/// <param name="Pearson">Pearson's statistic; null with a reason.</param>
/// <param name="DegreesOfFreedom">Rows less coefficients; null with a reason.</param>
/// <param name="Dispersion">Pearson's statistic over its degrees of freedom; null with a reason or without degrees of freedom.</param>
/// <param name="UnboundedTerms">The places of the coefficients without a bound, in the order of the coefficients.</param>
/// <param name="Reason">Why there is no fit; null where there is one.</param>
public sealed record RateFit(
    int Rows, IReadOnlyList<double> Coefficients, IReadOnlyList<Interval> Intervals, IReadOnlyList<double> StandardErrors, IReadOnlyList<IReadOnlyList<double>> Covariance,
    IReadOnlyList<double> Fitted, double? LogLikelihood, double? Deviance, double? NullDeviance, double? Pearson, int? DegreesOfFreedom, double? Dispersion,
    IReadOnlyList<int> UnboundedTerms, UndefinedReason? Reason)
{
    /// <summary>Akaike's criterion: twice the number of coefficients less twice the logarithm of the likelihood; null with a reason.</summary>
    public double? Akaike => (2 * Coefficients.Count) - (2 * LogLikelihood);

    internal static RateFit Without(int rows, UndefinedReason reason, IReadOnlyList<int>? unbounded = null) =>
        new(rows, [], [], [], [], [], null, null, null, null, null, null, unbounded ?? [], reason);
}
