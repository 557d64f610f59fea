namespace ScreenStats.Evaluation.Detection;

/// <summary>How surely the flag rule in force finds a faulty lot of one size and one fault.</summary>
/// <param name="Key">Measure, size and times joined by vertical bars.</param>
/// <param name="Measure"><c>refuted</c> or <c>invalid</c>.</param>
/// <param name="Size">The lot's size: <c>tenth-percentile</c>, <c>median</c> or <c>ninetieth-percentile</c> of this program's lots, or <c>tenth-of-all</c>.</param>
/// <param name="Trials">Its valid tests; for <c>invalid</c> its runs.</param>
/// <param name="OtherTrials">Those of all other lots.</param>
/// <param name="Lots">Lots compared.</param>
/// <param name="Rate">The others' rate: that of this program's lots that are not flagged.</param>
/// <param name="Times">The lot's rate as a multiple of it; 1 is no fault.</param>
/// <param name="Chance">The chance that the lot is flagged; null where its rate would be above 1.</param>
/// <param name="ChanceUndefined">Why there is none; null where there is one.</param>
public sealed record DetectionRow(
    string Key, string Measure, string Size, long Trials, long OtherTrials, int Lots, double Rate, double Times, double? Chance, string? ChanceUndefined)
{
    /// <summary>In how many of 100 programs like this one the lot would be flagged; null where there is no chance.</summary>
    public long? OfHundred => Chance is { } chance ? (long)Math.Round(100 * chance) : null;
}
