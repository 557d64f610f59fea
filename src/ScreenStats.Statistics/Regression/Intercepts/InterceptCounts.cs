namespace ScreenStats.Statistics.Regression.Intercepts;

/// <summary>The counts of one group, by combination of terms. Ordered by these alone, so that the labels of groups do not matter.</summary>
internal sealed class InterceptCounts : IComparable<InterceptCounts>
{
    private readonly int[] kinds;
    private readonly double[] events;
    private readonly double[] trials;

    /// <summary>Gathers the rows of a group, given by their places in the order of the patterns.</summary>
    public InterceptCounts(RowPatterns patterns, IEnumerable<int> rows)
    {
        var (found, y, n) = (new List<int>(), new List<double>(), new List<double>());
        foreach (var i in rows)
        {
            var row = patterns.Rows[i];
            if (found.Count == 0 || found[^1] != patterns.Of[i])
            {
                found.Add(patterns.Of[i]);
                y.Add(0);
                n.Add(0);
            }

            y[^1] += row.Events;
            n[^1] += row.Trials;
            Group = row.Group;
        }

        // Parts that are all events stay so however they are rounded.
        (kinds, events, trials) = ([.. found], [.. y.Zip(n, Math.Min)], [.. n]);
        (Events, Trials) = (events.Sum(), trials.Sum());
    }

    public int Group { get; }

    public double Events { get; }

    public double Trials { get; }

    public InterceptGroup Part() => new(kinds, events, trials);

    public int CompareTo(InterceptCounts? other)
    {
        if (other is null) return 1;
        if (kinds.AsSpan().SequenceCompareTo(other.kinds) is not 0 and var byKinds) return byKinds;
        return trials.AsSpan().SequenceCompareTo(other.trials) is not 0 and var byTrials ? byTrials : events.AsSpan().SequenceCompareTo(other.events);
    }
}
