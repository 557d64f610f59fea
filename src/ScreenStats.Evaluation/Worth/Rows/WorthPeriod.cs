using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Worth.Rows;

/// <summary>How much infection there was in a part of the data, and which option gains most for so much.</summary>
public sealed record WorthPeriod
{
    /// <summary><c>all-days</c>, <c>last-91-days</c> or <c>last-28-days</c> of the data.</summary>
    public required string Period { get; init; }

    /// <summary>Days of it.</summary>
    public required int Days { get; init; }

    /// <summary>Cases found in it.</summary>
    public required long Cases { get; init; }

    /// <summary>Infections in a week among 1,000 people.</summary>
    public required EstimateFinding WeeklyIncidence { get; init; }

    /// <summary>The way of screening that gains most there; none for no screening.</summary>
    public required string Option { get; init; }

    /// <summary>What is worth most after a positive there, as of its rung of the ladder.</summary>
    public required WorthConfirmation Confirmation { get; init; }

    /// <summary>The same at the lower limit; null where there is none.</summary>
    public required WorthConfirmation? ConfirmationAtLower { get; init; }

    /// <summary>The same at the upper limit.</summary>
    public required WorthConfirmation? ConfirmationAtUpper { get; init; }

    /// <summary>The way of screening that gains most at the lower limit; null where there is none.</summary>
    public required string? OptionAtLower { get; init; }

    /// <summary>That at the upper limit.</summary>
    public required string? OptionAtUpper { get; init; }

    /// <summary>Net benefit there of the option judged, all else at the centre.</summary>
    public required double NetBenefit { get; init; }
}
