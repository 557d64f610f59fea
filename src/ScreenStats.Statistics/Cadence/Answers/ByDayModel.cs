using System.Collections.Immutable;
using ScreenStats.Statistics.Cadence.Courses;

namespace ScreenStats.Statistics.Cadence.Answers;

/// <summary>A course by day, which holds the chance that a screen is positive.</summary>
/// <param name="Course">The course.</param>
public sealed record ByDayModel(InfectionCourse Course) : CourseModel
{
    /// <inheritdoc/>
    public override bool HoldsDetection => true;

    /// <inheritdoc/>
    public override bool KnowsInfectiousness => true;

    /// <inheritdoc/>
    public override CourseOutcome? Outcome(ScreeningSchedule schedule, ScreeningRules rules, double? sensitivity) => CourseYield.Of(Course, schedule, rules);

    /// <inheritdoc/>
    public override ImmutableArray<double> InfectiousnessByDay() => ByDay(Course);
}
