namespace ScreenStats.Counting.Programs;

/// <summary>A sensitivity or specificity as stated: as counts, as a value with an interval, or as a bare value.</summary>
/// <param name="Value">The value, in [0, 1].</param>
/// <param name="Successes">Successes, where stated as counts.</param>
/// <param name="Trials">Trials, where stated as counts; positive.</param>
/// <param name="Lower">Lower 95 % limit, where stated with an interval.</param>
/// <param name="Upper">Upper 95 % limit, where stated with an interval.</param>
public sealed record StatedAccuracy(double Value, long? Successes, long? Trials, double? Lower, double? Upper)
{
    /// <summary>True for a bare value, which a report calls "taken as exact".</summary>
    public bool TakenAsExact => Trials is null && Lower is null;
}
