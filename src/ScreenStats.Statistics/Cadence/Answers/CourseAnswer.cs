using ScreenStats.Statistics.Cadence.Courses;
using ScreenStats.Statistics.Cadence.Intervals;

namespace ScreenStats.Statistics.Cadence.Answers;

/// <summary>What one way of screening gives against a course of infection.</summary>
public sealed record CourseAnswer
{
    internal CourseAnswer(ScreeningSchedule schedule, CadenceOption figures, CourseOutcome? outcome, SpreadAnswer? spread)
    {
        Schedule = schedule;
        Figures = figures;
        Outcome = outcome;
        Spread = spread;
    }

    /// <summary>The schedule.</summary>
    public ScreeningSchedule Schedule { get; }

    /// <summary>Gain for each infection, burden for each person, and both for everybody.</summary>
    public CadenceOption Figures { get; }

    /// <summary>All that the course gives; null where it lacks a sensitivity.</summary>
    public CourseOutcome? Outcome { get; }

    /// <summary>How it spreads; null where that was not asked.</summary>
    public SpreadAnswer? Spread { get; }
}
