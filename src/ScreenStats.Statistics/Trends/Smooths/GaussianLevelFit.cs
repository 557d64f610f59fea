namespace ScreenStats.Statistics.Trends.Smooths;

/// <summary>A series smoothed as a level that wanders, or the reason why it is not.</summary>
/// <param name="Points">The periods, in order of time; empty with a <see cref="Reason"/>.</param>
/// <param name="Values">Values that are not missing.</param>
/// <param name="NoiseVariance">The variance of a value around its level; null with a reason.</param>
/// <param name="LevelVariance">The variance of the step of the level from one period to the next; null with a reason. 0 where a constant level is most likely.</param>
/// <param name="LogLikelihood">The natural logarithm of the likelihood of all values but the first; null with a reason.</param>
/// <param name="Confidence">The confidence of the limits, which take the variances as known.</param>
/// <param name="Reason">Why there is no smooth; null where there is one.</param>
public sealed record GaussianLevelFit(
    IReadOnlyList<GaussianLevelPoint> Points, int Values, double? NoiseVariance, double? LevelVariance, double? LogLikelihood, double Confidence, UndefinedReason? Reason)
{
    /// <summary>The method in words.</summary>
    public string Method => LevelVariance == 0 ? "local level, constant" : "local level";
}
