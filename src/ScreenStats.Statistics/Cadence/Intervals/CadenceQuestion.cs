namespace ScreenStats.Statistics.Cadence.Intervals;

/// <summary>What is known of a workplace and its screen when intervals are compared. What is not known leaves figures undefined.</summary>
public sealed record CadenceQuestion
{
    /// <summary>Days since infection from which a screen can be positive, 0 or more.</summary>
    public required double DetectableFrom { get; init; }

    /// <summary>Days since infection until which a screen can be positive, not before <see cref="DetectableFrom"/>.</summary>
    public required double DetectableTo { get; init; }

    /// <summary>The infectious time in days since infection, its ends from 0 to a billion; null where it is not known.</summary>
    public Interval? Infectious { get; init; }

    /// <summary>Days from a positive screen to isolation, 0 or more.</summary>
    public double DelayDays { get; init; }

    /// <summary>The sensitivity within the detectable window, in [0, 1]; null where it is not known.</summary>
    public double? Sensitivity { get; init; }

    /// <summary>The specificity, in [0, 1]; null where it is not known.</summary>
    public double? Specificity { get; init; }

    /// <summary>Infections per person-day, in [0, 1]; null where it is not known. Never a prevalence.</summary>
    public double? Incidence { get; init; }

    /// <summary>People screened, 1 or more; null where it is not known.</summary>
    public long? People { get; init; }

    internal InfectionWindows Windows => new(DetectableFrom, DetectableTo, Infectious?.Lower ?? DetectableFrom, Infectious?.Upper ?? DetectableTo);

    internal void Check()
    {
        _ = Windows;
        Guard.Days(DelayDays, nameof(DelayDays));
        if (Sensitivity is { } sensitivity) Guard.Probability(sensitivity, nameof(Sensitivity));
        if (Specificity is { } specificity) Guard.Probability(specificity, nameof(Specificity));
        if (Incidence is { } incidence) Guard.Probability(incidence, nameof(Incidence));
        if (People is < 1) throw new ArgumentOutOfRangeException(nameof(People), People, "The number of people must be 1 or more.");
    }
}
