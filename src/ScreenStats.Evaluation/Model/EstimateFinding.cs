using ScreenStats.Statistics;

namespace ScreenStats.Evaluation.Model;

/// <summary>A figure that is no plain proportion of counts: with limits, or undefined with the reason.</summary>
/// <param name="Estimate">The figure; null where undefined.</param>
/// <param name="EstimateUndefined">Why there is no figure, in plain words; null where there is one.</param>
/// <param name="Lower">Lower limit; null where undefined or where every input was taken as exact.</param>
/// <param name="Upper">Upper limit; null likewise.</param>
/// <param name="Method">What made the figure or its limits; null where undefined.</param>
/// <param name="Confidence">Confidence of the limits; null where there are none.</param>
public sealed record EstimateFinding(
    double? Estimate, string? EstimateUndefined, double? Lower, double? Upper, string? Method, double? Confidence)
{
    /// <summary>A finding from a computed estimate.</summary>
    /// <param name="estimate">The estimate.</param>
    /// <returns>The finding.</returns>
    public static EstimateFinding Of(Estimate estimate) => new(
        estimate.Value, estimate.Reason?.Describe(), estimate.Lower, estimate.Upper, estimate.Method, estimate.Confidence);

    /// <summary>No figure, and why.</summary>
    /// <param name="reason">Why, in plain words, without capital or full stop.</param>
    /// <returns>The finding.</returns>
    public static EstimateFinding Undefined(string reason) => new(null, reason, null, null, null, null);
}
