namespace ScreenStats.Statistics.Regression.Rates;

/// <summary>Events in an exposure (person-time, expected events, runs) under one combination of terms: one row of a Poisson regression.</summary>
public sealed record RateRow
{
    /// <summary>Makes a row.</summary>
    /// <param name="events">Events, finite, 0 or more, whole or real (counts divided by a design effect).</param>
    /// <param name="exposure">What the events are counted in, finite, 0 or more; a row without exposure says nothing and has no event.</param>
    /// <param name="terms">The values of the terms, finite, as many and in the same order in each row; without the constant.</param>
    /// <param name="group">The group of the row (a site, a cluster), counted from 0; 0 where there are no groups.</param>
    /// <exception cref="ArgumentNullException">No terms.</exception>
    /// <exception cref="ArgumentOutOfRangeException">Figures that cannot be, a term that is not finite, or a group below 0.</exception>
    public RateRow(double events, double exposure, IReadOnlyList<double> terms, int group = 0)
    {
        ArgumentNullException.ThrowIfNull(terms);
        if (!(exposure >= 0) || !double.IsFinite(exposure)) throw new ArgumentOutOfRangeException(nameof(exposure), exposure, "The exposure must be a finite number, 0 or more.");
        if (!(events >= 0) || !double.IsFinite(events) || (exposure == 0 && events > 0))
            throw new ArgumentOutOfRangeException(nameof(events), events, "The events must be a finite number, 0 or more, and 0 where there is no exposure.");
        ArgumentOutOfRangeException.ThrowIfNegative(group);
        foreach (var term in terms) Guard.Finite(term, nameof(terms));
        Events = events;
        Exposure = exposure;
        Terms = [.. terms];
        Group = group;
    }

    /// <summary>Events.</summary>
    public double Events { get; }

    /// <summary>Exposure.</summary>
    public double Exposure { get; }

    /// <summary>The values of the terms.</summary>
    public IReadOnlyList<double> Terms { get; }

    /// <summary>The group of the row, counted from 0.</summary>
    public int Group { get; }
}
