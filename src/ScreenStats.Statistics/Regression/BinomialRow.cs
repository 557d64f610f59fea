namespace ScreenStats.Statistics.Regression;

/// <summary>Events of trials under one combination of terms: one row of a logistic regression.</summary>
public sealed record BinomialRow
{
    /// <summary>Makes a row.</summary>
    /// <param name="events">Events, 0 to <paramref name="trials"/>.</param>
    /// <param name="trials">Trials, 0 or more; a row without trials says nothing.</param>
    /// <param name="terms">The values of the terms, finite, as many and in the same order in each row; without the constant.</param>
    /// <param name="group">The group of the row (a site, a cluster), counted from 0; 0 where there are no groups.</param>
    /// <exception cref="ArgumentNullException">No terms.</exception>
    /// <exception cref="ArgumentOutOfRangeException">Counts that cannot be, a term that is not finite, or a group below 0.</exception>
    public BinomialRow(long events, long trials, IReadOnlyList<double> terms, int group = 0)
    {
        ArgumentNullException.ThrowIfNull(terms);
        Guard.Counts(events, trials);
        ArgumentOutOfRangeException.ThrowIfNegative(group);
        foreach (var term in terms) Guard.Finite(term, nameof(terms));
        Events = events;
        Trials = trials;
        Terms = [.. terms];
        Group = group;
    }

    /// <summary>Events.</summary>
    public long Events { get; }

    /// <summary>Trials.</summary>
    public long Trials { get; }

    /// <summary>The values of the terms.</summary>
    public IReadOnlyList<double> Terms { get; }

    /// <summary>The group of the row, counted from 0.</summary>
    public int Group { get; }
}
