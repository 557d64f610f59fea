namespace ScreenStats.Statistics.Monitoring.Sequential.Evidence;

/// <summary>The evidence against one lot, look by look, and the alarm if there was one.</summary>
public sealed record EvidencePath
{
    internal EvidencePath(AlarmThreshold threshold, IReadOnlyList<EvidencePoint> points, EvidenceAlarm? alarm, long uninformative, long impossible)
    {
        Threshold = threshold;
        Points = points;
        Alarm = alarm;
        Uninformative = uninformative;
        Impossible = impossible;
    }

    /// <summary>The threshold.</summary>
    public AlarmThreshold Threshold { get; }

    /// <summary>The evidence after each look that has an event, in order.</summary>
    public IReadOnlyList<EvidencePoint> Points { get; }

    /// <summary>The first alarm; null where there was none.</summary>
    public EvidenceAlarm? Alarm { get; }

    /// <summary>Events that say nothing about the lot, because they had to fall on it or could not; they change no evidence.</summary>
    public long Uninformative { get; }

    /// <summary>
    /// Events that fell on the lot with a null probability of 0, or elsewhere with one of 1: the probabilities given are wrong. They change no
    /// evidence, are no part of <see cref="Uninformative"/>, and must be looked into.
    /// </summary>
    public long Impossible { get; }

    /// <summary>The natural logarithm of the evidence after the last look; 0 without events.</summary>
    public double LogEvidence => Points.Count == 0 ? 0 : Points[^1].LogEvidence;

    /// <summary>The natural logarithm of the largest evidence of all looks, at least 0.</summary>
    public double LogMaximum => Points.Count == 0 ? 0 : Points[^1].LogMaximum;

    /// <summary>The p-value that is valid at whatever look one stops: 1 over the largest evidence, at most 1.</summary>
    public double PValue => Math.Exp(-LogMaximum);
}
