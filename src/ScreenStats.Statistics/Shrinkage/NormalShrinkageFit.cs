namespace ScreenStats.Statistics.Shrinkage;

/// <summary>Figures of one precision drawn to their mean.</summary>
/// <param name="Values">Figures given.</param>
/// <param name="Mean">Their mean; null with a <see cref="Reason"/>.</param>
/// <param name="Distance">The sum of their squared distances from it, in units of the sampling variance; null with a reason.</param>
/// <param name="Factor">The share of each distance that is kept, in [0, 1]; null with a reason.</param>
/// <param name="Estimates">The figures drawn in, in the order given; empty with a reason.</param>
/// <param name="Reason">Why there is nothing; null where there is.</param>
public sealed record NormalShrinkageFit(int Values, double? Mean, double? Distance, double? Factor, IReadOnlyList<double> Estimates, UndefinedReason? Reason);
