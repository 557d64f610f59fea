namespace ScreenStats.Synthesis.Planning;

/// <summary>The confirmatory test: how often and how soon it is made, and how often it is right.</summary>
public sealed record SynthesisConfirmation
{
    /// <summary>Share of positive and inconclusive runs for which a specimen is taken, in [0, 1].</summary>
    public double FollowUpShare { get; init; } = 0.85;

    /// <summary>Share of those specimens taken later than the policy allows (4 to 7 days), in [0, 1].</summary>
    public double LateShare { get; init; } = 0.02;

    /// <summary>Share of those specimens recorded up to an hour before the run, in [0, 1].</summary>
    public double RecordedBeforeShare { get; init; } = 0.01;

    /// <summary>Latest usual delay from run to specimen, in hours, at least 1. The delay leans to short ones.</summary>
    public int UsualDelayHours { get; init; } = 30;

    /// <summary>Shortest time from specimen to report, in hours, at least 1.</summary>
    public int ReportFromHours { get; init; } = 8;

    /// <summary>Longest time from specimen to report, in hours.</summary>
    public int ReportToHours { get; init; } = 44;

    /// <summary>Share of indeterminate results, in [0, 1).</summary>
    public double IndeterminateShare { get; init; } = 0.015;

    /// <summary>Share of rejected specimens, in [0, 1).</summary>
    public double RejectedShare { get; init; } = 0.015;

    /// <summary>Share of those without a conclusive result from whom a second specimen is taken within a day, in [0, 1].</summary>
    public double RetakeShare { get; init; } = 0.5;

    /// <summary>Chance of a positive result where the infection is detectable, in [0, 1].</summary>
    public double Sensitivity { get; init; } = 0.98;

    /// <summary>Chance of a negative result where it is not, in [0, 1].</summary>
    public double Specificity { get; init; } = 0.9995;

    /// <summary>Sensitivity as stated in the program file, as counts; null: not stated.</summary>
    public string? StatedSensitivity { get; init; }

    /// <summary>Specificity as stated in the program file, as counts; null: not stated.</summary>
    public string? StatedSpecificity { get; init; }

    /// <summary>Where the stated accuracy comes from.</summary>
    public string Source { get; init; } = "fictional";

    /// <summary>Word in the method column.</summary>
    public string Method { get; init; } = "molecular";

    /// <summary>Days of isolation after a confirmatory positive, at least 0: a setting of the fictional employer.</summary>
    public int IsolationDays { get; init; } = 7;

    /// <summary>Share of confirmed people who are screened again after half of that time, in [0, 1].</summary>
    public double EarlyReturnShare { get; init; } = 0.02;

    /// <summary>Days a person stays away after a positive or inconclusive run that nobody follows up, at least 0.</summary>
    public int UnverifiedAwayDays { get; init; } = 5;
}
