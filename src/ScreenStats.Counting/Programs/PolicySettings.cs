using System.Collections.Immutable;
using ScreenStats.Counting.Cubes;

namespace ScreenStats.Counting.Programs;

/// <summary>Rules by which runs and confirmatory specimens belong together.</summary>
public sealed record PolicySettings
{
    /// <summary>Hours after a run within which a specimen follows it up. Default 72.</summary>
    public double ConfirmWithinHours { get; init; } = 72;

    /// <summary>Hours before a run within which a specimen still follows it up. Default 2.</summary>
    public double ConfirmBeforeHours { get; init; } = 2;

    /// <summary>Hours after a negative run within which an audit specimen verifies it. Default 24.</summary>
    public double AuditWithinHours { get; init; } = 24;

    /// <summary>Hours from collection to report where the export does not record reports. Default 48.</summary>
    public double ReportLagHours { get; init; } = 48;

    /// <summary>Days after a confirmatory positive within which another belongs to the same episode. Default 90.</summary>
    public int EpisodeDays { get; init; } = 90;

    /// <summary>Days of isolation after a confirmatory positive; null: not stated, local rules set it.</summary>
    public int? IsolationDays { get; init; }

    /// <summary>Outcomes that call for a confirmatory test. Default positive and inconclusive.</summary>
    public ImmutableArray<Outcome> FollowUp { get; init; } = [Outcome.Positive, Outcome.Inconclusive];

    /// <summary>Occasions on which control swabs must be run; empty: none is asked for, and nothing is missed.</summary>
    public ImmutableArray<ControlTrigger> ControlsRequired { get; init; } = [];
}
