using System.Collections.Immutable;
using ScreenStats.Statistics.Monitoring.Runs;

namespace ScreenStats.Statistics.Monitoring.Charts;

/// <summary>One point of a chart, with its own limits and the rules that fired at it.</summary>
public sealed record ChartPoint
{
    internal ChartPoint(int index) => Index = index;

    /// <summary>The position in the input, from 0. What it is called is the caller's to know.</summary>
    public int Index { get; }

    /// <summary>The events counted, where the chart is one of counts.</summary>
    public long? Events { get; internal init; }

    /// <summary>The trials they were counted among, where the chart is one of proportions.</summary>
    public long? Trials { get; internal init; }

    /// <summary>What was observed: a proportion, a count, a gap or a time. Null where nothing was tried.</summary>
    public double? Observed { get; internal init; }

    /// <summary>What is plotted and held against the limits: the observed value, or the moving average up to it.</summary>
    public double? Value { get; internal init; }

    /// <summary>The centre at this point.</summary>
    public double? Centre { get; internal init; }

    /// <summary>The lower limit, which is itself inside; null where there is none.</summary>
    public double? Lower { get; internal init; }

    /// <summary>The upper limit, which is itself inside; null where there is none.</summary>
    public double? Upper { get; internal init; }

    /// <summary>The smallest count inside, where limits are whole numbers.</summary>
    public long? FewestInside { get; internal init; }

    /// <summary>The largest count inside, where limits are whole numbers.</summary>
    public long? MostInside { get; internal init; }

    /// <summary>
    /// How far the point lies from the centre, as a standard normal variable would: the distance in standard errors; with probability limits the
    /// normal score of the exact chance of a value as far out or farther, at most 37 either way.
    /// </summary>
    public double? Score { get; internal init; }

    /// <summary>The side of the centre; with probability limits the side on which the chance of as much or more is at most one half.</summary>
    public ChartSide Side { get; internal init; }

    /// <summary>The rules that fired at this point, in the order of the enumeration.</summary>
    public ImmutableArray<RunRule> Signals { get; internal init; } = [];

    /// <summary>Why the point has no value or no limits; null where it has both.</summary>
    public UndefinedReason? Reason { get; internal init; }
}
