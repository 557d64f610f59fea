namespace ScreenStats.Statistics.Trends.RobustErrors;

/// <summary>The coefficients of a regression over time with errors robust to dependence between neighbouring periods.</summary>
/// <param name="Rows">Rows that say something.</param>
/// <param name="Coefficients">The coefficients, the constant first where there is one; empty with a <see cref="Reason"/>.</param>
/// <param name="ModelErrors">The standard error of each coefficient if rows were independent and the model right.</param>
/// <param name="StandardErrors">The robust standard error of each coefficient.</param>
/// <param name="Covariance">The robust covariance, row by row.</param>
/// <param name="Intervals">Limits of each coefficient from its robust error and the normal distribution.</param>
/// <param name="Lag">The farthest neighbours taken in; null with a reason.</param>
/// <param name="Reason">Why there is no fit; null where there is one.</param>
public sealed record RobustFit(
    int Rows, IReadOnlyList<double> Coefficients, IReadOnlyList<double> ModelErrors, IReadOnlyList<double> StandardErrors, IReadOnlyList<IReadOnlyList<double>> Covariance,
    IReadOnlyList<Interval> Intervals, int? Lag, UndefinedReason? Reason);
