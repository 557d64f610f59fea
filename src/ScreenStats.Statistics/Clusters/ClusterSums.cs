using System.Runtime.CompilerServices;
using ScreenStats.Statistics.Proportions;

namespace ScreenStats.Statistics.Clusters;

/// <summary>
/// What a design effect needs of clustered counts: how many clusters, and sums over them of trials n and events x.
/// </summary>
/// <remarks>Only clusters with at least one trial count. The sums of squares are 128 bits wide, so that they cannot overflow.</remarks>
public readonly record struct ClusterSums
{
    /// <summary>Makes the sums.</summary>
    /// <param name="clusters">Clusters with at least one trial.</param>
    /// <param name="trials">Sum of n.</param>
    /// <param name="events">Sum of x, at most <paramref name="trials"/>.</param>
    /// <param name="trialsSquared">Sum of n².</param>
    /// <param name="trialsTimesEvents">Sum of n x.</param>
    /// <param name="eventsSquared">Sum of x².</param>
    /// <exception cref="ArgumentOutOfRangeException">Sums that no clusters can have.</exception>
    public ClusterSums(long clusters, long trials, long events, Int128 trialsSquared, Int128 trialsTimesEvents, Int128 eventsSquared)
    {
        Guard.NotNegative(clusters);
        Guard.NotNegative(trials);
        if (events < 0 || events > trials) throw new ArgumentOutOfRangeException(nameof(events), events, "The events must lie between 0 and the trials.");
        if (clusters > trials) throw new ArgumentOutOfRangeException(nameof(clusters), clusters, "Each cluster has at least one trial.");
        if (clusters == 0 && trials > 0) throw new ArgumentOutOfRangeException(nameof(clusters), clusters, "Trials need at least one cluster.");
        if (trialsSquared < trials) throw new ArgumentOutOfRangeException(nameof(trialsSquared), trialsSquared, "The sum of squared trials is at least the sum of trials.");
        if (trialsTimesEvents < events || trialsTimesEvents > trialsSquared)
            throw new ArgumentOutOfRangeException(nameof(trialsTimesEvents), trialsTimesEvents, "The sum of trials times events lies between the events and the sum of squared trials.");
        if (eventsSquared < events || eventsSquared > trialsTimesEvents)
            throw new ArgumentOutOfRangeException(nameof(eventsSquared), eventsSquared, "The sum of squared events lies between the events and the sum of trials times events.");
        Clusters = clusters;
        Trials = trials;
        Events = events;
        TrialsSquared = trialsSquared;
        TrialsTimesEvents = trialsTimesEvents;
        EventsSquared = eventsSquared;
    }

    /// <summary>Clusters with at least one trial.</summary>
    public long Clusters { get; }

    /// <summary>Sum of trials n.</summary>
    public long Trials { get; }

    /// <summary>Sum of events x.</summary>
    public long Events { get; }

    /// <summary>Sum of n².</summary>
    public Int128 TrialsSquared { get; }

    /// <summary>Sum of n x.</summary>
    public Int128 TrialsTimesEvents { get; }

    /// <summary>Sum of x².</summary>
    public Int128 EventsSquared { get; }

    /// <summary>These sums with one more cluster; one without trials changes nothing.</summary>
    /// <param name="trials">The cluster's trials, 0 or more.</param>
    /// <param name="events">The cluster's events, 0 to <paramref name="trials"/>.</param>
    /// <returns>The new sums.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Counts that cannot be.</exception>
    public ClusterSums With(long trials, long events)
    {
        Guard.NotNegative(trials);
        if (events < 0 || events > trials) throw new ArgumentOutOfRangeException(nameof(events), events, "The events must lie between 0 and the trials.");
        if (trials == 0) return this;
        return new ClusterSums(
            Clusters + 1,
            Trials + trials,
            Events + events,
            TrialsSquared + ((Int128)trials * trials),
            TrialsTimesEvents + ((Int128)trials * events),
            EventsSquared + ((Int128)events * events));
    }

    /// <summary>The sums over given clusters.</summary>
    /// <param name="clusters">Trials and events of each cluster.</param>
    /// <returns>Their sums.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Counts that cannot be.</exception>
    // Compiled for good at once: called for every proportion, over all of its clusters.
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public static ClusterSums From(IEnumerable<(long Trials, long Events)> clusters)
    {
        long number = 0, trials = 0, events = 0;
        Int128 trialsSquared = 0, trialsTimesEvents = 0, eventsSquared = 0;
        foreach (var (n, x) in clusters)
        {
            // Refuses counts that cannot be.
            if (x < 0 || x > n) return default(ClusterSums).With(n, x);
            if (n == 0) continue;
            (number, trials, events) = (number + 1, trials + n, events + x);
            trialsSquared += Math.BigMul(n, n);
            trialsTimesEvents += Math.BigMul(n, x);
            eventsSquared += Math.BigMul(x, x);
        }

        return new ClusterSums(number, trials, events, trialsSquared, trialsTimesEvents, eventsSquared);
    }
}
