using ScreenStats.Counting.Programs;
using ScreenStats.Evaluation.Clusters;

namespace ScreenStats.Evaluation.Controls;

/// <summary>How many occasions for a control swab passed without one.</summary>
/// <param name="Key">Trigger, grouping and level joined by vertical bars.</param>
/// <param name="Trigger">Which occasions.</param>
/// <param name="Grouping">Program or site.</param>
/// <param name="Level">The site; empty for the whole program.</param>
/// <param name="IsRequired">True where the program file asks for a control on such occasions; else this is information only.</param>
/// <param name="Unknown">Why it cannot be told; null where it can.</param>
/// <param name="RunsWithoutControl">Screening runs that were done without one: before the first control of what started, or on days without one.</param>
/// <param name="Missed">Occasions without a passed control on or before their day (events) among all (trials).</param>
public sealed record ControlDuty(
    string Key, ControlTrigger Trigger, Grouping Grouping, string Level, bool IsRequired, string? Unknown, long RunsWithoutControl, ProportionFinding Missed);
