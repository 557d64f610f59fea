using ScreenStats.Evaluation.Clusters;

namespace ScreenStats.Evaluation.Specimens;

/// <summary>Confirmatory specimens that were taken for one reason.</summary>
/// <param name="Reason">Why: <c>follow-up</c>, <c>audit</c>, <c>other</c>, <c>(none)</c> where not recorded, or <c>all</c>.</param>
/// <param name="Specimens">All specimens.</param>
/// <param name="Persons">People they were taken from; null for all reasons together, since one person may have several.</param>
/// <param name="Indeterminate">Tested without a conclusion.</param>
/// <param name="Rejected">Not tested.</param>
/// <param name="Positive">Positive (events) of conclusive specimens (trials).</param>
public sealed record SpecimenFinding(string Reason, long Specimens, long? Persons, long Indeterminate, long Rejected, ProportionFinding Positive)
{
    /// <summary>Negative specimens.</summary>
    public long Negative => Positive.Trials - Positive.Events;
}
