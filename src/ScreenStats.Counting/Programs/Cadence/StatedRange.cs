namespace ScreenStats.Counting.Programs.Cadence;

/// <summary>A figure as stated: a bare value, or a value with its 95 % range.</summary>
/// <param name="Value">The value, in the domain of its key.</param>
/// <param name="Lower">Lower end of the 95 % range, at most the value; may be the least that the domain allows. Null: taken as exact.</param>
/// <param name="Upper">Upper end, at least the value; null exactly where <paramref name="Lower"/> is.</param>
/// <param name="Source">Where it comes from; empty where not stated.</param>
public sealed record StatedRange(double Value, double? Lower = null, double? Upper = null, string Source = "")
{
    /// <summary>True for a bare value, or a range without width: a report calls it "taken as exact".</summary>
    public bool TakenAsExact => Lower is null || Lower == Upper;
}
