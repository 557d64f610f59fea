using ScreenStats.Counting.Cubes;
using ScreenStats.Evaluation.Clusters;

namespace ScreenStats.Evaluation.FollowThrough;

/// <summary>What became of the runs of one outcome in one part of the program.</summary>
/// <param name="Key">What tells the row from the others of its list.</param>
/// <param name="Grouping">By what the program is broken down.</param>
/// <param name="Level">The part; empty for the whole program.</param>
/// <param name="Outcome">Positive or inconclusive.</param>
/// <param name="Confirmed">Runs whose confirmatory test was positive.</param>
/// <param name="Refuted">Runs whose confirmatory test was negative: that test's word, not the truth.</param>
/// <param name="Unresolved">Runs with an indeterminate or rejected specimen only.</param>
/// <param name="Pending">Runs without a specimen for which one may still be reported.</param>
/// <param name="Unverified">Runs without a specimen for which none is to be expected any more.</param>
/// <param name="FollowThrough">Runs with a conclusive confirmatory result, of all that were due.</param>
public sealed record FollowUpFinding(
    string Key, Grouping Grouping, string Level, Outcome Outcome,
    long Confirmed, long Refuted, long Unresolved, long Pending, long Unverified, ProportionFinding FollowThrough)
{
    /// <summary>Runs that were due for a confirmatory test: the sum of all five.</summary>
    public long Due => Confirmed + Refuted + Unresolved + Pending + Unverified;

    /// <summary>Runs with a conclusive confirmatory result.</summary>
    public long Conclusive => Confirmed + Refuted;

    /// <summary>Runs never verified, of those due, in [0, 1]; null where none was due.</summary>
    public double? UnverifiedShare => Due == 0 ? null : (double)Unverified / Due;

    /// <summary>Runs still pending, of those due, in [0, 1]; null where none was due.</summary>
    public double? PendingShare => Due == 0 ? null : (double)Pending / Due;
}
