namespace ScreenStats.Reporting.Charts.Comparisons;

/// <summary>A level's share as it was counted, and as it is after adjustment.</summary>
/// <param name="Name">The level.</param>
/// <param name="Trials">Runs or tests it rests on.</param>
/// <param name="Raw">Its share as counted; null where it has none.</param>
/// <param name="Adjusted">Its share after adjustment and shrinkage.</param>
/// <param name="Lower">Lower limit of the adjusted share.</param>
/// <param name="Upper">Upper limit of the adjusted share.</param>
/// <param name="Standing">Where it lies against the inner limits of the funnel.</param>
/// <param name="Far">Whether it lies outside the outer limits too.</param>
internal sealed record AdjustedLevel(string Name, long Trials, double? Raw, double Adjusted, double Lower, double Upper, LevelStanding Standing, bool Far = false);
