using System.Globalization;

namespace ScreenStats.Statistics.Heterogeneity;

/// <summary>Events of trials in one of several groups that are compared, for instance a site.</summary>
public readonly record struct GroupCount
{
    /// <summary>Makes the counts.</summary>
    /// <param name="events">Events, 0 to <paramref name="trials"/>.</param>
    /// <param name="trials">Trials, 0 or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">Counts that cannot be.</exception>
    public GroupCount(long events, long trials)
    {
        if (trials < 0) throw new ArgumentOutOfRangeException(nameof(trials), trials, "The trials of a group must be 0 or more.");
        if (events < 0 || events > trials) throw new ArgumentOutOfRangeException(nameof(events), events, "The events of a group must lie between 0 and its trials.");
        Events = events;
        Trials = trials;
    }

    /// <summary>Events of the group.</summary>
    public long Events { get; }

    /// <summary>Trials of the group.</summary>
    public long Trials { get; }

    /// <summary>Events per trial; null without trials.</summary>
    public double? Rate => Trials == 0 ? null : (double)Events / Trials;

    /// <summary>The counts, for debugging.</summary>
    /// <returns>Invariant text, for instance <c>5/120</c>.</returns>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Events}/{Trials}");

    internal static (long Events, long Trials) Sum(IReadOnlyList<GroupCount> groups)
    {
        long events = 0, trials = 0;
        foreach (var group in groups) (events, trials) = (checked(events + group.Events), checked(trials + group.Trials));
        return (events, trials);
    }
}
