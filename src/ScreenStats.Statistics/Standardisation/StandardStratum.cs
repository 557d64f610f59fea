namespace ScreenStats.Statistics.Standardisation;

/// <summary>One stratum of a site (for instance a period and kit), with its size in the standard population.</summary>
public readonly record struct StandardStratum
{
    /// <summary>Makes a stratum.</summary>
    /// <param name="events">Events, 0 or more.</param>
    /// <param name="population">What they are counted over: trials, or time at risk; finite, 0 or more, above 0 where there are events.</param>
    /// <param name="standard">The size of the stratum in the standard population, finite, 0 or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">Figures that cannot be.</exception>
    public StandardStratum(long events, double population, double standard)
    {
        Guard.NotNegative(events);
        if (!(population >= 0) || !double.IsFinite(population) || (events > 0 && population == 0))
            throw new ArgumentOutOfRangeException(nameof(population), population, "The population must be a finite number, 0 or more, and above 0 where there are events.");
        if (!(standard >= 0) || !double.IsFinite(standard)) throw new ArgumentOutOfRangeException(nameof(standard), standard, "The standard population must be a finite number, 0 or more.");
        Events = events;
        Population = population;
        Standard = standard;
    }

    /// <summary>Events.</summary>
    public long Events { get; }

    /// <summary>What they are counted over.</summary>
    public double Population { get; }

    /// <summary>The size of the stratum in the standard population.</summary>
    public double Standard { get; }
}
