using System.Text.Json.Serialization;
using ScreenStats.Counting.Cubes;

namespace ScreenStats.Evaluation.Controls;

/// <summary>A control swab that did not show what it should, and the screening runs that stand between the last passed control and the next.</summary>
/// <remarks>
/// Passed controls are those of the same site and lot that should show the same: a passed negative control says nothing of a device that a
/// positive one failed on. Of two controls of one day where either has no time, or both the same, nobody knows which came first: such a
/// passed one is neither before nor after. Screens are counted by day, so those of the first and of the last day are all in the counts:
/// they are upper counts.
/// </remarks>
public sealed record ControlBracket
{
    /// <summary>Site, lot, day, time, kit, operator and what was expected and observed, joined by vertical bars.</summary>
    public required string Key { get; init; }

    /// <summary>Site of the control.</summary>
    public required string Site { get; init; }

    /// <summary>Lot of the control, or <see cref="Levels.None"/>.</summary>
    public required string Lot { get; init; }

    /// <summary>Kit of the control, or <see cref="Levels.None"/>.</summary>
    public required string Kit { get; init; }

    /// <summary>Operator pseudonym, or <see cref="Levels.None"/>; for training, not for discipline.</summary>
    public required string Operator { get; init; }

    /// <summary>Local day of the control.</summary>
    public required DateOnly Day { get; init; }

    /// <summary>Local time of the control; null where only a date is recorded.</summary>
    public required TimeOnly? Time { get; init; }

    /// <summary>What the swab should show: <c>negative</c> or <c>positive</c>.</summary>
    public required string Expected { get; init; }

    /// <summary>What it showed.</summary>
    public required string Observed { get; init; }

    /// <summary>Runs of control swabs that are alike in all of this; mostly 1.</summary>
    public required long Controls { get; init; }

    /// <summary>Day of the last passed control before it; null where there is none.</summary>
    public required DateOnly? LastPassedDay { get; init; }

    /// <summary>Time of that control; null where it is not known.</summary>
    public required TimeOnly? LastPassedTime { get; init; }

    /// <summary>Day of the next passed control after it; null where there is none.</summary>
    public required DateOnly? NextPassedDay { get; init; }

    /// <summary>Time of that control; null where it is not known.</summary>
    public required TimeOnly? NextPassedTime { get; init; }

    /// <summary>Screening runs of the site and lot from the day of the last passed control to the day of the next, both whole; to the beginning and end of the data where there is none.</summary>
    public required long Runs { get; init; }

    /// <summary>Positive runs among them.</summary>
    public required long Positives { get; init; }

    /// <summary>Negative runs among them.</summary>
    public required long Negatives { get; init; }

    /// <summary>True where no passed control followed: the failure stands.</summary>
    [JsonIgnore]
    public bool IsOpen => NextPassedDay is null;
}
