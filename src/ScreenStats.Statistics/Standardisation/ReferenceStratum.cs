namespace ScreenStats.Statistics.Standardisation;

/// <summary>One stratum of a site (for instance a period and kit), with the events and population of a reference.</summary>
public readonly record struct ReferenceStratum
{
    /// <summary>Makes a stratum.</summary>
    /// <param name="events">Events of the site, 0 or more.</param>
    /// <param name="population">What they are counted over: trials, or time at risk; finite, 0 or more, above 0 where there are events.</param>
    /// <param name="referenceEvents">Events of the reference, 0 or more.</param>
    /// <param name="referencePopulation">What those are counted over; finite, 0 or more, above 0 where there are events.</param>
    /// <exception cref="ArgumentOutOfRangeException">Figures that cannot be.</exception>
    public ReferenceStratum(long events, double population, long referenceEvents, double referencePopulation)
    {
        Guard.NotNegative(events);
        Guard.NotNegative(referenceEvents);
        if (!(population >= 0) || !double.IsFinite(population) || (events > 0 && population == 0))
            throw new ArgumentOutOfRangeException(nameof(population), population, "The population must be a finite number, 0 or more, and above 0 where there are events.");
        if (!(referencePopulation >= 0) || !double.IsFinite(referencePopulation) || (referenceEvents > 0 && referencePopulation == 0))
            throw new ArgumentOutOfRangeException(nameof(referencePopulation), referencePopulation, "The reference's population must be a finite number, 0 or more, and above 0 where there are events.");
        Events = events;
        Population = population;
        ReferenceEvents = referenceEvents;
        ReferencePopulation = referencePopulation;
    }

    /// <summary>Events of the site.</summary>
    public long Events { get; }

    /// <summary>What they are counted over.</summary>
    public double Population { get; }

    /// <summary>Events of the reference.</summary>
    public long ReferenceEvents { get; }

    /// <summary>What those are counted over.</summary>
    public double ReferencePopulation { get; }
}
