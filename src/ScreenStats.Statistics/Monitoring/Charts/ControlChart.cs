using System.Collections.Immutable;
using ScreenStats.Statistics.Monitoring.Runs;

namespace ScreenStats.Statistics.Monitoring.Charts;

/// <summary>A control chart as a value: its points, their limits, and what fired. A picture is made from it, not the other way round.</summary>
public sealed record ControlChart
{
    internal ControlChart(string method, ChartLimits limits, ImmutableArray<ChartPoint> points, ImmutableArray<RunRule> rules)
    {
        Method = method;
        Limits = limits;
        Points = points;
        Rules = rules;
        Signals = [.. points.SelectMany(point => point.Signals.Select(rule => new ChartSignal(point.Index, rule, point.Side)))];
    }

    /// <summary>The method in words.</summary>
    public string Method { get; }

    /// <summary>How the limits were made.</summary>
    public ChartLimits Limits { get; }

    /// <summary>The points in the order given.</summary>
    public ImmutableArray<ChartPoint> Points { get; }

    /// <summary>The rules that were looked for.</summary>
    public ImmutableArray<RunRule> Rules { get; }

    /// <summary>All that fired, by point and then by rule.</summary>
    public ImmutableArray<ChartSignal> Signals { get; }

    /// <summary>The centre: the proportion, mean count, mean gap or mean time the limits stand around. Null where undefined.</summary>
    public double? Centre { get; internal init; }

    /// <summary>Whether the centre was given by the caller and not taken from these points.</summary>
    public bool CentreGiven { get; internal init; }

    /// <summary>The chance of lying outside on either side, for probability limits.</summary>
    public double? TailProbability { get; internal init; }

    /// <summary>Laney's factor sigma z by which the limits are widened (narrowed below 1); null for other charts.</summary>
    public double? Widening { get; internal init; }

    /// <summary>What was found on whether the points vary by more than chance, where it was looked at.</summary>
    public OverdispersionCheck? Overdispersion { get; internal init; }

    /// <summary>Why the chart has no limits; null where it has.</summary>
    public UndefinedReason? Reason { get; internal init; }
}
