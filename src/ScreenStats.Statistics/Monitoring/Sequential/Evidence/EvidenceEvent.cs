namespace ScreenStats.Statistics.Monitoring.Sequential.Evidence;

/// <summary>One refuted positive as seen from one lot: how likely it was to fall on the lot, and whether it did.</summary>
public readonly record struct EvidenceEvent
{
    /// <summary>An event.</summary>
    /// <param name="nullProbability">The chance in [0, 1] that the event falls on the lot if the lot is like the others it could have fallen on.</param>
    /// <param name="onLot">Whether it fell on the lot.</param>
    /// <param name="look">The look (a day, for instance) at which it was reported, 0 or more; events of one look are judged together.</param>
    /// <exception cref="ArgumentOutOfRangeException">The chance is outside [0, 1], or the look below 0.</exception>
    public EvidenceEvent(double nullProbability, bool onLot, long look = 0)
    {
        Guard.Probability(nullProbability);
        Guard.NotNegative(look);
        NullProbability = nullProbability;
        OnLot = onLot;
        Look = look;
    }

    /// <summary>The chance, if the lot is like the others, that the event falls on it.</summary>
    public double NullProbability { get; }

    /// <summary>Whether it fell on the lot.</summary>
    public bool OnLot { get; }

    /// <summary>The look at which it was reported.</summary>
    public long Look { get; }
}
