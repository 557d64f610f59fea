using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Cadence.Rows;

/// <summary>How infection would pass on inside without screening, as it follows from what is known.</summary>
/// <param name="Reproduction">Infections that one case causes then.</param>
/// <param name="ShareGrowing">The share of draws in which that is 1 or more.</param>
/// <param name="AllInside">Whether that is the bound at which nothing is brought in.</param>
public sealed record CadenceGrowth(EstimateFinding Reproduction, double ShareGrowing, bool AllInside);
