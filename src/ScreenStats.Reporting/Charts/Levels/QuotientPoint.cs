namespace ScreenStats.Reporting.Charts.Levels;

/// <summary>What was done for each thing found at one level, with limits.</summary>
/// <param name="Name">The level.</param>
/// <param name="Found">What was found.</param>
/// <param name="Estimate">Done for each found; null where nothing was found.</param>
/// <param name="Lower">Lower limit.</param>
/// <param name="Upper">Upper limit; null where there is none.</param>
internal sealed record QuotientPoint(string Name, long Found, double? Estimate, double Lower, double? Upper)
{
    /// <summary>Fewer found than this are drawn hollow and pale.</summary>
    public const long FewBelow = 5;

    /// <summary>Whether it rests on few.</summary>
    public bool Few => Found < FewBelow;
}
