namespace ScreenStats.Statistics.Cadence.Intervals;

/// <summary>What one interval between screens gives.</summary>
public sealed record CadenceOption
{
    internal CadenceOption(double everyDays) => EveryDays = everyDays;

    /// <summary>Days from one screen to the next.</summary>
    public double EveryDays { get; }

    /// <summary>The chance that an infection is found.</summary>
    public required Estimate DetectionProbability { get; init; }

    /// <summary>Infectious days of an infection that fall after isolation, on average.</summary>
    public required Estimate InfectiousDaysRemoved { get; init; }

    /// <summary>Their share of all infectious days.</summary>
    public required Estimate FractionRemoved { get; init; }

    /// <summary>Screens of one person in a year of 365 days.</summary>
    public required double ScreensPerPersonYear { get; init; }

    /// <summary>False positives of one uninfected person in a year.</summary>
    public required Estimate FalsePositivesPerPersonYear { get; init; }

    /// <summary>The chance that an uninfected person has one or more of them in a year.</summary>
    public required Estimate AnyFalsePositivePerYear { get; init; }

    /// <summary>Infections of all people found in a year.</summary>
    public required Estimate TruePositivesPerYear { get; init; }

    /// <summary>False positives of all people in a year.</summary>
    public required Estimate FalsePositivesPerYear { get; init; }

    /// <summary>The share of the program's positives that are infected.</summary>
    public required Estimate PositivePredictiveValue { get; init; }
}
