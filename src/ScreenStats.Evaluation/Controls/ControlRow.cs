using ScreenStats.Evaluation.Clusters;
using ScreenStats.Evaluation.Shared;

namespace ScreenStats.Evaluation.Controls;

/// <summary>Runs of control swabs: what they should show, and what they showed.</summary>
/// <param name="Key">Grouping, level and expectation joined by vertical bars.</param>
/// <param name="Grouping">Program, site, lot, kit or operator.</param>
/// <param name="Level">Name of the part; empty for the whole program.</param>
/// <param name="Expected"><c>negative</c> or <c>positive</c>.</param>
/// <param name="Negative">Runs that were negative.</param>
/// <param name="Positive">Runs that were positive.</param>
/// <param name="Inconclusive">Runs with a test line and no control line.</param>
/// <param name="Invalid">Runs with neither line.</param>
/// <param name="AsExpected">Runs that showed what they should (events) among all runs (trials).</param>
/// <param name="Comparison">How its failed controls compare with the others'; null for the whole program and for kits, of which only those with a failed one are listed.</param>
public sealed record ControlRow(
    string Key, Grouping Grouping, string Level, string Expected, long Negative, long Positive, long Inconclusive, long Invalid,
    ProportionFinding AsExpected, LevelComparison? Comparison)
{
    /// <summary>All runs.</summary>
    public long Runs => AsExpected.Trials;

    /// <summary>Runs that did not show what they should.</summary>
    public long Failed => AsExpected.Trials - AsExpected.Events;
}
