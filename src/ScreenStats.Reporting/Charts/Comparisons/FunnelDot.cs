namespace ScreenStats.Reporting.Charts.Comparisons;

/// <summary>A level in a funnel.</summary>
/// <param name="Name">The level.</param>
/// <param name="Trials">Runs or tests it rests on, 1 or more.</param>
/// <param name="Rate">Its share, in [0, 1].</param>
/// <param name="Standing">Where it lies between the outer limits that are drawn.</param>
internal sealed record FunnelDot(string Name, long Trials, double Rate, LevelStanding Standing);
