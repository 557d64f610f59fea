namespace ScreenStats.Statistics.Monitoring.Sequential.CumulativeSums;

/// <summary>A cumulative sum over data.</summary>
public sealed record CumulativeSumPath
{
    internal CumulativeSumPath(double limit, CumulativeSumOptions options, IReadOnlyList<CumulativeSumPoint> points, IReadOnlyList<CumulativeSumSignal> signals)
    {
        Limit = limit;
        Options = options;
        Points = points;
        Signals = signals;
    }

    /// <summary>The limit.</summary>
    public double Limit { get; }

    /// <summary>The conventions.</summary>
    public CumulativeSumOptions Options { get; }

    /// <summary>The statistic after each observation, in order.</summary>
    public IReadOnlyList<CumulativeSumPoint> Points { get; }

    /// <summary>The signals, in order.</summary>
    public IReadOnlyList<CumulativeSumSignal> Signals { get; }
}
