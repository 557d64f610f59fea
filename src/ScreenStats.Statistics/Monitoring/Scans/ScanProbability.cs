namespace ScreenStats.Statistics.Monitoring.Scans;

/// <summary>The chance that some window of a stretch of time holds many events, though nothing but chance gathers them.</summary>
public sealed record ScanProbability
{
    internal ScanProbability(double? value, bool exact, string? method, UndefinedReason? reason)
    {
        Value = value;
        Exact = exact;
        Method = method;
        Reason = reason;
    }

    /// <summary>The chance, in [0, 1]; null with a <see cref="Reason"/>.</summary>
    public double? Value { get; }

    /// <summary>Whether the chance is exact; else it is an approximation.</summary>
    public bool Exact { get; }

    /// <summary>The method in words; null where undefined.</summary>
    public string? Method { get; }

    /// <summary>Why there is no chance; null where there is one.</summary>
    public UndefinedReason? Reason { get; }
}
