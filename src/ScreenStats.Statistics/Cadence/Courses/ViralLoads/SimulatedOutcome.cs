namespace ScreenStats.Statistics.Cadence.Courses.ViralLoads;

/// <summary>What a schedule achieves among simulated people, with the standard errors of the simulation.</summary>
/// <remarks>The errors are of the drawing alone: they say nothing of how well the model is known. Null where the figure is undefined.</remarks>
public sealed record SimulatedOutcome
{
    internal SimulatedOutcome(int people, CourseOutcome outcome)
    {
        People = people;
        Outcome = outcome;
    }

    /// <summary>People simulated.</summary>
    public int People { get; }

    /// <summary>The figures.</summary>
    public CourseOutcome Outcome { get; }

    /// <summary>The standard error of <see cref="CourseOutcome.DetectionProbability"/>.</summary>
    public required double DetectionError { get; init; }

    /// <summary>The standard error of <see cref="CourseOutcome.ScreensTaken"/>.</summary>
    public required double ScreensError { get; init; }

    /// <summary>The standard error of <see cref="CourseOutcome.FractionRemoved"/>.</summary>
    public required double? RemovedError { get; init; }

    /// <summary>The standard error of <see cref="CourseOutcome.FractionRemovedBySymptoms"/>.</summary>
    public required double? RemovedBySymptomsError { get; init; }

    /// <summary>The standard error of <see cref="CourseOutcome.FractionRemovedByScreening"/>.</summary>
    public required double? RemovedByScreeningError { get; init; }

    /// <summary>The standard error of <see cref="CourseOutcome.CaughtBeforeInfectious"/>.</summary>
    public required double? CaughtBeforeInfectiousError { get; init; }
}
