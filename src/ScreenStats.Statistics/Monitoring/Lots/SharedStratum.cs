namespace ScreenStats.Statistics.Monitoring.Lots;

/// <summary>A stratum in which each event falls on one lot with a known chance, the lot's share of what could have had the event.</summary>
/// <remarks>For weighted trials: refuted positives, say, are expected in proportion to valid tests times the share of positives followed up.</remarks>
public readonly record struct SharedStratum
{
    /// <summary>Makes a stratum.</summary>
    /// <param name="lotEvents">Events of the lot, 0 to <paramref name="events"/>.</param>
    /// <param name="events">Events of all lots together, this one's among them.</param>
    /// <param name="share">The lot's share, in [0, 1]; with a share of 0 no event, with a share of 1 each event is the lot's.</param>
    /// <exception cref="ArgumentOutOfRangeException">A share outside [0, 1], or events that cannot be.</exception>
    public SharedStratum(long lotEvents, long events, double share)
    {
        Guard.Probability(share);
        Guard.NotNegative(events);
        if (lotEvents < 0 || lotEvents > events || (share <= 0 && lotEvents > 0) || (share >= 1 && lotEvents < events))
            throw new ArgumentOutOfRangeException(nameof(lotEvents), lotEvents, "The events of the lot must lie between 0 and those of the stratum, none without a share and all with the whole.");
        LotEvents = lotEvents;
        Events = events;
        Share = share;
    }

    /// <summary>Events of the lot.</summary>
    public long LotEvents { get; }

    /// <summary>Events of all lots together.</summary>
    public long Events { get; }

    /// <summary>The lot's share.</summary>
    public double Share { get; }

    /// <summary>A stratum whose share is a weight over a sum of weights, for instance followed-up valid tests.</summary>
    /// <param name="lotEvents">Events of the lot.</param>
    /// <param name="events">Events of all lots together.</param>
    /// <param name="lotWeight">The lot's weight, finite, 0 or more.</param>
    /// <param name="weight">The weight of all lots together, finite, above 0, at least <paramref name="lotWeight"/>.</param>
    /// <returns>The stratum.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A weight or a count that cannot be.</exception>
    public static SharedStratum FromWeights(long lotEvents, long events, double lotWeight, double weight)
    {
        if (!(weight > 0) || !double.IsFinite(weight)) throw new ArgumentOutOfRangeException(nameof(weight), weight, "The weight of a stratum must be a finite number above 0.");
        if (!(lotWeight >= 0 && lotWeight <= weight)) throw new ArgumentOutOfRangeException(nameof(lotWeight), lotWeight, "The weight of the lot must lie between 0 and that of the stratum.");
        return new SharedStratum(lotEvents, events, lotWeight / weight);
    }
}
