using ScreenStats.Evaluation.Clusters;

namespace ScreenStats.Evaluation.Repeats;

/// <summary>Repeats done among repeats due.</summary>
/// <param name="Key">Grouping, level and outcome joined by vertical bars.</param>
/// <param name="Grouping">Program or site.</param>
/// <param name="Level">Name of the site; empty for the whole program.</param>
/// <param name="Outcome"><c>inconclusive</c>, <c>invalid</c>, or <c>both</c>.</param>
/// <param name="Share">Repeats done (events) among repeats due (trials).</param>
public sealed record RepeatRow(string Key, Grouping Grouping, string Level, string Outcome, ProportionFinding Share)
{
    /// <summary>Repeats due: inconclusive and invalid runs that call for another on the same day.</summary>
    public long Due => Share.Trials;

    /// <summary>Repeats done.</summary>
    public long Done => Share.Events;
}
