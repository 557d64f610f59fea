using ScreenStats.Statistics.Cadence.Courses;

namespace ScreenStats.Statistics.Cadence.Answers;

/// <summary>What is known of a workplace, its screen and the course of an infection when ways of screening are compared. What is not known leaves figures undefined.</summary>
public sealed record CourseQuestion
{
    /// <summary>The course of the infection.</summary>
    public required CourseModel Model { get; init; }

    /// <summary>Delays, what isolates, and how misses repeat.</summary>
    public ScreeningRules Rules { get; init; } = new();

    /// <summary>The sensitivity, in [0, 1]; null where it is not known.</summary>
    public double? Sensitivity { get; init; }

    /// <summary>The specificity, in [0, 1]; null where it is not known.</summary>
    public double? Specificity { get; init; }

    /// <summary>New infections per person-day, in [0, 1]; null where it is not known. Never a prevalence.</summary>
    public double? Incidence { get; init; }

    /// <summary>People screened, 1 or more; null where it is not known.</summary>
    public long? People { get; init; }

    /// <summary>How it spreads inside; null where that is not asked.</summary>
    public SpreadQuestion? Spread { get; init; }

    internal void Check()
    {
        ArgumentNullException.ThrowIfNull(Model);
        ArgumentNullException.ThrowIfNull(Rules);
        if (Sensitivity is { } sensitivity) Guard.Probability(sensitivity, nameof(Sensitivity));
        if (Specificity is { } specificity) Guard.Probability(specificity, nameof(Specificity));
        if (Incidence is { } incidence) Guard.Probability(incidence, nameof(Incidence));
        if (People is < 1 or > 1_000_000_000_000_000) throw new ArgumentOutOfRangeException(nameof(People), People, "The number of people must be from 1 to 1e15.");
        Spread?.Check();
    }
}
