using System.Collections.Immutable;
using ScreenStats.Statistics.Cadence.Courses;

namespace ScreenStats.Statistics.Cadence.Answers;

/// <summary>A course of an infection that may still lack its sensitivity: what a question is asked with.</summary>
public abstract record CourseModel
{
    private protected CourseModel()
    {
    }

    /// <summary>True where the model says by itself how likely a screen is to be positive, so that no sensitivity is asked for.</summary>
    public abstract bool HoldsDetection { get; }

    /// <summary>True where it says when, or how much, the infection is passed on.</summary>
    public abstract bool KnowsInfectiousness { get; }

    /// <summary>What a schedule of screens finds and takes away.</summary>
    /// <param name="schedule">The schedule.</param>
    /// <param name="rules">The rules.</param>
    /// <param name="sensitivity">The sensitivity in [0, 1]; null where it is not known.</param>
    /// <returns>The outcome; null where it cannot be told without a sensitivity.</returns>
    public abstract CourseOutcome? Outcome(ScreeningSchedule schedule, ScreeningRules rules, double? sensitivity);

    /// <summary>How infectious a case is on day 1, 2, … after its infection, in any unit; empty where nothing is known or passed on.</summary>
    /// <returns>The weights, none below 0.</returns>
    public abstract ImmutableArray<double> InfectiousnessByDay();

    private protected static ImmutableArray<double> ByDay(InfectionCourse course)
    {
        const int Parts = 24;
        if (course.InfectiousDays <= 0) return [];
        var days = (int)Math.Ceiling(course.InfectiousTo);
        // A case that infects within the day of its own infection counts to the first day after it.
        return
        [
            .. Enumerable.Range(0, days).Select(day => Enumerable.Range(0, Parts).Sum(part => course.Infectiousness(day + ((part + 0.5) / Parts))) / Parts),
        ];
    }
}
