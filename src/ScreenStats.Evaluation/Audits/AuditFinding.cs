using ScreenStats.Evaluation.Clusters;

namespace ScreenStats.Evaluation.Audits;

/// <summary>Negative runs that were verified by an audit specimen, in one part of the program.</summary>
/// <param name="Key">What tells the row from the others of its list.</param>
/// <param name="Grouping">By what the program is broken down.</param>
/// <param name="Level">The part; empty for the whole program.</param>
/// <param name="Missed">Audited negative runs whose confirmatory test was positive.</param>
/// <param name="Agreed">Audited negative runs whose confirmatory test was negative.</param>
/// <param name="Unresolved">Audited negative runs without a conclusive confirmatory result.</param>
/// <param name="NegativePredictiveValue">Agreed, of the audited negative runs with a conclusive result.</param>
public sealed record AuditFinding(
    string Key, Grouping Grouping, string Level, long Missed, long Agreed, long Unresolved, ProportionFinding NegativePredictiveValue)
{
    /// <summary>Audited negative runs: the sum of all three.</summary>
    public long Audited => Missed + Agreed + Unresolved;
}
