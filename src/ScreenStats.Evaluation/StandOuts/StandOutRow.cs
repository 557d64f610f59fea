using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.StandOuts;

/// <summary>One lot or site by one measure: whether it stands out, and by how much.</summary>
/// <param name="Key">What it is found by.</param>
/// <param name="Rank">Its place among those that stand out, 1 for the first; null where it does not.</param>
/// <param name="By"><c>lot</c> or <c>site</c>.</param>
/// <param name="Level">Name of the lot or site.</param>
/// <param name="Measure"><c>refuted</c>, <c>invalid</c>, <c>cases</c> or <c>failed-controls</c>.</param>
/// <param name="Verdict">What is to be said of it.</param>
/// <param name="Flagged">Whether it is flagged among all lots, or all sites.</param>
/// <param name="Material">Whether the excess within its strata is material.</param>
/// <param name="Strata">Site-weeks (of sites: lot-weeks) that can tell it from the others.</param>
/// <param name="Observed">Its events in these strata.</param>
/// <param name="Expected">Its events there if all were alike; null where nothing could be compared.</param>
/// <param name="ExpectedUndefined">Why nothing could be compared; null where it could.</param>
/// <param name="Ratio">Its rate as a multiple of the others' in the same strata.</param>
/// <param name="PHolm">Exact chance within the strata, adjusted for the number compared; null where nothing could be compared.</param>
public sealed record StandOutRow(
    string Key, int? Rank, string By, string Level, string Measure, StandOutVerdict Verdict, bool Flagged, bool Material, long Strata, long Observed,
    double? Expected, string? ExpectedUndefined, EstimateFinding Ratio, double? PHolm)
{
    /// <summary>Whether it stands out.</summary>
    public bool StandsOut => Verdict is StandOutVerdict.MayMissInfections or StandOutVerdict.StandsOut or StandOutVerdict.StandsOutOverAll;

    /// <summary>Why there is no adjusted chance; null where there is one.</summary>
    public string? PHolmUndefined => PHolm is null ? ExpectedUndefined ?? Ratio.EstimateUndefined : null;
}
