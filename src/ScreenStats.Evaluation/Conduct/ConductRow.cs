namespace ScreenStats.Evaluation.Conduct;

/// <summary>Counted runs with one finding of conduct, in one part of the program.</summary>
/// <param name="Key">Kind, grouping and level joined by vertical bars.</param>
/// <param name="Kind">What was found: <c>expired-lot</c>, <c>read-outside-window</c>, <c>beyond-kit-contents</c> or <c>within-isolation</c>.</param>
/// <param name="Grouping">Program, site or lot.</param>
/// <param name="Level">Name of the part; empty for the whole program.</param>
/// <param name="Found">Runs with the finding; null where the data or the program file do not allow to tell.</param>
/// <param name="FoundUndefined">Why it cannot be told; null where it can.</param>
/// <param name="Runs">All counted runs of the part.</param>
public sealed record ConductRow(string Key, string Kind, Grouping Grouping, string Level, long? Found, string? FoundUndefined, long Runs)
{
    /// <summary>Runs with the finding among all counted runs, in [0, 1]; null where it cannot be told or nothing was counted.</summary>
    public double? Share => Found is { } found && Runs > 0 ? (double)found / Runs : null;
}
