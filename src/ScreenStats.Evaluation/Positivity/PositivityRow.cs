using ScreenStats.Evaluation.Clusters;

namespace ScreenStats.Evaluation.Positivity;

/// <summary>Positive tests among valid tests in one part of the program.</summary>
/// <param name="Key">What tells the row from the others of its list: the level, the period, or both joined by a vertical bar.</param>
/// <param name="Grouping">By what the program was broken down.</param>
/// <param name="Level">Name of the part; empty for the whole program.</param>
/// <param name="PeriodStart">First day of the period; null for the whole span.</param>
/// <param name="Share">Positives among valid tests.</param>
public sealed record PositivityRow(string Key, Grouping Grouping, string Level, DateOnly? PeriodStart, ProportionFinding Share)
{
    /// <summary>Valid tests.</summary>
    public long Tests => Share.Trials;

    /// <summary>Positive tests.</summary>
    public long Positives => Share.Events;
}
