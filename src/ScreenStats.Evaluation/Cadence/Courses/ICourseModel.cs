using ScreenStats.Evaluation.Cadence.Draws;

namespace ScreenStats.Evaluation.Cadence.Courses;

/// <summary>The course of an infection under each option.</summary>
internal interface ICourseModel
{
    /// <summary>Whether the infectious time is known.</summary>
    bool KnowsInfectious { get; }

    /// <summary>What each option does to one infection.</summary>
    CourseFigures Of(ParameterSet at);

    /// <summary>How infectious a case is 1, 2, 3… days after its infection.</summary>
    double[] InfectiousnessByDay(ParameterSet at);
}
