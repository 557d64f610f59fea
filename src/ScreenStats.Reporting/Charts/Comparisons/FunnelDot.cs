namespace ScreenStats.Reporting.Charts.Comparisons;

/// <summary>A level in a funnel.</summary>
/// <param name="Name">The level.</param>
/// <param name="Trials">Runs or tests it rests on, 1 or more.</param>
/// <param name="Rate">Its share, in [0, 1].</param>
/// <param name="Standing">Where it lies against the inner limits (95 %) that are drawn.</param>
/// <param name="Far">Whether it lies outside the outer limits (99.8 %) too.</param>
internal sealed record FunnelDot(string Name, long Trials, double Rate, LevelStanding Standing, bool Far = false);
