namespace ScreenStats.Statistics.Monitoring.Charts;

/// <summary>Whether the points of a chart vary by more than chance, all over and not at a few of them.</summary>
public sealed record OverdispersionCheck
{
    internal OverdispersionCheck()
    {
    }

    /// <summary>Pearson's statistic Σ (x - n p)² / (n p (1 - p)) over the points with trials.</summary>
    public double? Statistic { get; internal init; }

    /// <summary>Points less one.</summary>
    public int? DegreesOfFreedom { get; internal init; }

    /// <summary>The chance of as large a statistic if all points had one rate.</summary>
    public double? PValue { get; internal init; }

    /// <summary>Laney's σz; 1 is what chance alone gives.</summary>
    public double? Widening { get; internal init; }

    /// <summary>How many points lie outside the exact limits.</summary>
    public int PointsOutside { get; internal init; }

    /// <summary>The same chance without the points outside the exact limits; null where fewer than two are left or it cannot be told.</summary>
    public double? PValueInside { get; internal init; }

    /// <summary>Whether the overdispersed chart is the one to use.</summary>
    public bool Demanded { get; internal init; }

    /// <summary>Why nothing can be told; null where it can.</summary>
    public UndefinedReason? Reason { get; internal init; }
}
