namespace ScreenStats.Statistics.Regression;

/// <summary>Events of trials under one combination of terms: one row of a logistic regression.</summary>
public sealed record BinomialRow
{
    private readonly double[] values;

    /// <summary>Makes a row.</summary>
    /// <param name="events">Events, 0 to <paramref name="trials"/>; need not be whole, as where both are divided by a design effect.</param>
    /// <param name="trials">Trials, finite, 0 or more; a row without trials says nothing.</param>
    /// <param name="terms">The values of the terms, finite, as many and in the same order in each row; without the constant.</param>
    /// <param name="group">The group of the row (a site, a cluster), counted from 0; 0 where there are no groups.</param>
    /// <exception cref="ArgumentNullException">No terms.</exception>
    /// <exception cref="ArgumentOutOfRangeException">Counts that cannot be, a term that is not finite, or a group below 0.</exception>
    public BinomialRow(double events, double trials, IReadOnlyList<double> terms, int group = 0)
    {
        ArgumentNullException.ThrowIfNull(terms);
        Guard.Counts(events, trials);
        ArgumentOutOfRangeException.ThrowIfNegative(group);
        values = [.. terms];
        foreach (var term in values) Guard.Finite(term, nameof(terms));
        Events = events;
        Trials = trials;
        Group = group;
    }

    /// <summary>A row of the same terms, which are shared.</summary>
    internal BinomialRow(double events, double trials, BinomialRow like)
    {
        (values, Events, Trials, Group) = (like.values, events, trials, like.Group);
    }

    /// <summary>Events.</summary>
    public double Events { get; }

    /// <summary>Trials.</summary>
    public double Trials { get; }

    /// <summary>The values of the terms.</summary>
    public IReadOnlyList<double> Terms => Array.AsReadOnly(values);

    /// <summary>The group of the row, counted from 0.</summary>
    public int Group { get; }

    /// <summary>The terms as they are kept.</summary>
    internal ReadOnlySpan<double> Values => values;
}
