using ScreenStats.Counting.Programs;

namespace ScreenStats.Counting.Rules;

/// <summary>The time around a run within which a specimen belongs to it. Both ends are included.</summary>
/// <remarks>
/// Where run and specimen both have a time of day: run - before &lt;= specimen &lt;= run + within, to the second. Where either has only a
/// date: the same with local calendar days and ceil(hours / 24).
/// </remarks>
public readonly record struct FollowUpWindow
{
    /// <summary>Creates a window.</summary>
    /// <param name="beforeHours">Hours before the run, finite, at least 0.</param>
    /// <param name="withinHours">Hours after the run, finite, at least 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">A length is negative or not finite, or longer than 100 years.</exception>
    public FollowUpWindow(double beforeHours, double withinHours)
    {
        BeforeSeconds = (long)Math.Floor(Checked(beforeHours, nameof(beforeHours)) * 3600);
        WithinSeconds = (long)Math.Floor(Checked(withinHours, nameof(withinHours)) * 3600);
        BeforeDays = (int)Math.Ceiling(beforeHours / 24);
        WithinDays = (int)Math.Ceiling(withinHours / 24);
    }

    /// <summary>Seconds before the run.</summary>
    public long BeforeSeconds { get; }

    /// <summary>Seconds after the run.</summary>
    public long WithinSeconds { get; }

    /// <summary>Whole days before the run.</summary>
    public int BeforeDays { get; }

    /// <summary>Whole days after the run.</summary>
    public int WithinDays { get; }

    /// <summary>The window of follow-up: confirmBeforeHours before to confirmWithinHours after the run.</summary>
    /// <param name="policy">The policy.</param>
    /// <returns>The window.</returns>
    public static FollowUpWindow OfFollowUp(PolicySettings policy) => new(policy.ConfirmBeforeHours, policy.ConfirmWithinHours);

    /// <summary>The window of an audit: confirmBeforeHours before to auditWithinHours after the run.</summary>
    /// <param name="policy">The policy.</param>
    /// <returns>The window.</returns>
    public static FollowUpWindow OfAudit(PolicySettings policy) => new(policy.ConfirmBeforeHours, policy.AuditWithinHours);

    /// <summary>True where the specimen belongs to the run by time.</summary>
    /// <param name="run">When the run was collected.</param>
    /// <param name="specimen">When the specimen was collected.</param>
    /// <returns>Whether it is within the window, ends included.</returns>
    public bool Holds(Moment run, Moment specimen)
    {
        if (run.WholeDaysTo(specimen))
        {
            var days = specimen.DayNumber - run.DayNumber;
            return days >= -BeforeDays && days <= WithinDays;
        }

        var seconds = specimen.Instant - run.Instant;
        return seconds >= -BeforeSeconds && seconds <= WithinSeconds;
    }

    /// <summary>True where the specimen comes before everything the window holds.</summary>
    /// <param name="run">When the run was collected.</param>
    /// <param name="specimen">When the specimen was collected.</param>
    /// <returns>Whether it is earlier than the window.</returns>
    public bool StartsAfter(Moment run, Moment specimen) => run.WholeDaysTo(specimen)
        ? specimen.DayNumber - run.DayNumber < -BeforeDays
        : specimen.Instant - run.Instant < -BeforeSeconds;

    /// <summary>The last second at which a specimen can still belong to the run; the end of the last day for a run with only a date.</summary>
    /// <param name="run">When the run was collected.</param>
    /// <returns>Seconds on the scale of <see cref="Moment.Instant"/>.</returns>
    public long Closes(Moment run) => run.DateOnly
        ? run.EndOfDay + (WithinDays * Moment.SecondsPerDay)
        : run.Instant + WithinSeconds;

    private static double Checked(double hours, string name) => hours is >= 0 and <= 876_600
        ? hours
        : throw new ArgumentOutOfRangeException(name, hours, "Hours are at least 0 and at most 100 years.");
}
