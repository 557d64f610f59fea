using ScreenStats.Evaluation.Clusters;

namespace ScreenStats.Evaluation.InvalidRuns;

/// <summary>Inconclusive and invalid runs among all runs in one part of the program.</summary>
/// <param name="Key">What tells the row from the others of its list: the level, the period, or both joined by a vertical bar.</param>
/// <param name="Grouping">By what the program was broken down.</param>
/// <param name="Level">Name of the part; empty for the whole program.</param>
/// <param name="PeriodStart">First day of the period; null for the whole span.</param>
/// <param name="Inconclusive">Runs with a test line and no control line.</param>
/// <param name="Invalid">Runs with neither line.</param>
/// <param name="Share">Both together among all runs.</param>
public sealed record InvalidRunRow(
    string Key, Grouping Grouping, string Level, DateOnly? PeriodStart, long Inconclusive, long Invalid, ProportionFinding Share)
{
    /// <summary>All runs.</summary>
    public long Runs => Share.Trials;
}
