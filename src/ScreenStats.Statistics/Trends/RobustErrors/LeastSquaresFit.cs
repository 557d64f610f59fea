namespace ScreenStats.Statistics.Trends.RobustErrors;

/// <summary>An ordinary least-squares fit.</summary>
/// <param name="Rows">Rows.</param>
/// <param name="Coefficients">The coefficients, the constant first where there is one; empty with a <see cref="Reason"/>.</param>
/// <param name="StandardErrors">The standard error of each coefficient from the residual variance; empty with a reason.</param>
/// <param name="Residuals">Value less fitted value of each row; empty with a reason.</param>
/// <param name="ResidualVariance">Sum of squared residuals over rows less coefficients; null with a reason.</param>
/// <param name="Reason">Why there is no fit; null where there is one.</param>
public sealed record LeastSquaresFit(
    int Rows, IReadOnlyList<double> Coefficients, IReadOnlyList<double> StandardErrors, IReadOnlyList<double> Residuals, double? ResidualVariance, UndefinedReason? Reason);
