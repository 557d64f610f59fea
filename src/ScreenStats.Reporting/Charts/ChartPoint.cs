namespace ScreenStats.Reporting.Charts;

/// <summary>A proportion with its limits and what it rests on, as a chart needs it.</summary>
/// <param name="Denominator">Runs or tests it rests on.</param>
/// <param name="Estimate">Estimate, in [0, 1].</param>
/// <param name="Lower">Lower limit.</param>
/// <param name="Upper">Upper limit.</param>
/// <param name="Name">The level, where levels are compared.</param>
/// <param name="Start">First day of the period, where periods are compared.</param>
/// <param name="Flagged">Whether it is flagged for what the chart shows.</param>
internal sealed record ChartPoint(
    long Denominator, double Estimate, double Lower, double Upper, string Name = "", DateOnly Start = default, bool Flagged = false)
{
    /// <summary>Fewer runs or tests than this are drawn hollow and pale.</summary>
    public const long FewBelow = 100;

    /// <summary>Whether the figure rests on few counts.</summary>
    public bool Few => Denominator < FewBelow;
}
