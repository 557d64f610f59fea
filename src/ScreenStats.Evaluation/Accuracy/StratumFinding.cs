using ScreenStats.Counting.Cubes;

namespace ScreenStats.Evaluation.Accuracy;

/// <summary>One sampling stratum of the audits.</summary>
/// <param name="Stratum">Its name, (none) where none is recorded.</param>
/// <param name="Origin">How its negative runs are known.</param>
/// <param name="Negatives">Negative runs in it; null where that is not known.</param>
/// <param name="Missed">Audited ones whose confirmatory test was positive.</param>
/// <param name="Agreed">Audited ones whose confirmatory test was negative.</param>
public sealed record StratumFinding(string Stratum, StratumOrigin Origin, long? Negatives, long Missed, long Agreed)
{
    /// <summary>Audited runs with a conclusive result.</summary>
    public long Audited => Missed + Agreed;

    /// <summary>How many negative runs each audited one stands for; null where that is not known or none was audited.</summary>
    public double? Weight => Negatives is { } all && Audited > 0 ? (double)all / Audited : null;
}
