namespace ScreenStats.Reporting.Charts.Levels;

/// <summary>A proportion of one level with its limits, and what the runs without a conclusion leave possible.</summary>
/// <param name="Point">The proportion among runs with a conclusion.</param>
/// <param name="BoundLower">The proportion if every run without a conclusion went against it; null where it may not be seen.</param>
/// <param name="BoundUpper">The proportion if every such run went for it; null likewise.</param>
internal sealed record BoundedPoint(ChartPoint Point, double? BoundLower, double? BoundUpper)
{
    /// <summary>Fewer runs with a conclusion than this are drawn hollow and pale.</summary>
    public const long FewBelow = 20;

    /// <summary>Where what is drawn of it begins.</summary>
    public double Lower => Math.Min(Point.Lower, BoundLower ?? 1);

    /// <summary>Where what is drawn of it ends.</summary>
    public double Upper => Math.Max(Point.Upper, BoundUpper ?? 0);

    /// <summary>Whether it rests on few runs.</summary>
    public bool Few => Point.Denominator < FewBelow;
}
