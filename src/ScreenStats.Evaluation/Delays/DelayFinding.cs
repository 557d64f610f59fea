using ScreenStats.Counting.Cubes;

namespace ScreenStats.Evaluation.Delays;

/// <summary>How long people waited, in one part of the program.</summary>
/// <param name="Key">What tells the row from the others of its list.</param>
/// <param name="Kind">Which waiting time.</param>
/// <param name="Grouping">By what the program is broken down.</param>
/// <param name="Level">The part; empty for the whole program.</param>
/// <param name="Resulted">Waiting times that are known.</param>
/// <param name="Unresulted">Specimens without a recorded report.</param>
/// <param name="WholeDays">Of the known ones, those known to whole days only.</param>
/// <param name="MedianHours">Median in hours; null where none is known. Below zero where the specimen came before the run.</param>
/// <param name="MedianHoursUndefined">Why there is no median; null where there is one.</param>
/// <param name="Percentile90Hours">90th percentile (nearest rank) in hours; null where none is known.</param>
public sealed record DelayFinding(
    string Key, DelayKind Kind, Grouping Grouping, string Level, long Resulted, long Unresulted, long WholeDays,
    double? MedianHours, string? MedianHoursUndefined, double? Percentile90Hours);
