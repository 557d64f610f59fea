using System.Collections.Immutable;
using ScreenStats.Counting.Programs.Cadence;
using ScreenStats.Evaluation.Cadence;
using ScreenStats.Evaluation.Cadence.Courses;
using ScreenStats.Evaluation.Cadence.Draws;
using ScreenStats.Evaluation.Cadence.Inputs;
using ScreenStats.Evaluation.Cadence.Rows;
using ScreenStats.Statistics.Cadence.Courses;

namespace ScreenStats.Evaluation.WhatIf.Grids;

/// <summary>What screening every so many days finds and takes away, by the course and the assumptions of how often to screen, at their central values.</summary>
internal sealed class IntervalModel
{
    private readonly KnownFigures known;
    private readonly ParameterSet at;
    private readonly CourseSettings course;
    private readonly ScreeningRules rules;
    private readonly Lazy<ImmutableArray<CourseOutcome>> simulated;

    private IntervalModel(KnownFigures known, ParameterSet at, double participation)
    {
        this.known = known;
        this.at = at;
        Participation = participation;
        course = known.Settings.Course!;
        rules = new ScreeningRules { DelayDays = CourseParts.DaysToIsolation(at, known.Settings.IsolateOn), MissCorrelation = CourseParts.Correlation(at) };
        simulated = new(() => LoadCourses.Screened(known.Settings, at, [.. Enumerable.Range(1, IntervalGrids.LongestDays).Select(days => Every(days))], rules));
    }

    /// <summary>The share of screens due that are taken.</summary>
    public double Participation { get; }

    /// <summary>Whether a sensitivity is asked for: a course by day holds its own, and one of viral loads the limit of detection.</summary>
    public bool TakesSensitivity => course.Kind == CourseKind.Windows;

    /// <summary>The model; or why there is none, without capital or full stop.</summary>
    /// <param name="work">How the outcomes of how often to screen were computed.</param>
    /// <param name="onlyStated">Whether nothing may be taken from the data, since their small counts are hidden.</param>
    public static (IntervalModel? Model, string? Undefined) Of(CadenceWork work, bool onlyStated)
    {
        var known = work.Known;
        bool FromData(Parameter parameter) => known.All.Any(figure => figure.Parameter == parameter && figure.Origin == CadenceOrigin.Data);
        if (known.Settings.Course is null) return (null, "the program file states no course of the infection (cadence, course)");
        if (known.Settings.IsolateOn == IsolateOn.Confirmation)
        {
            if (!known.Knows(Parameter.ConfirmatoryDelay)) return (null, "people are sent away on confirmation, and nothing says how long that takes");
            if (onlyStated && FromData(Parameter.ConfirmatoryDelay)) return (null, "people are sent away on confirmation, and how long that takes comes from data whose small counts are hidden");
        }

        var participation = onlyStated && FromData(Parameter.Participation) ? 1 : work.Draws.Centre[Parameter.Participation] ?? 1;
        return (new IntervalModel(known, work.Draws.Centre, participation), null);
    }

    /// <summary>What one interval gives.</summary>
    /// <param name="days">Days between screens, 1 to the longest.</param>
    /// <param name="sensitivity">The sensitivity, in [0, 1]; not used where none is asked for.</param>
    public CourseOutcome Outcome(int days, double sensitivity) =>
        course.Kind == CourseKind.ViralLoad ? simulated.Value[days - 1] : CourseYield.Of(Infection(sensitivity), Every(days), rules);

    private InfectionCourse Infection(double sensitivity) =>
        (TakesSensitivity
            ? InfectionCourse.Windows(CourseParts.Windows(at), sensitivity)
            : InfectionCourse.ByDay([.. course.Days.Select(day => new CourseDay(day.AgeDays, day.Detection, day.Infectiousness))])) with { Symptoms = CourseParts.Symptoms(at) };

    private ScreeningSchedule Every(int days) => ScreeningSchedule.Every(days) with { Participation = Participation };
}
