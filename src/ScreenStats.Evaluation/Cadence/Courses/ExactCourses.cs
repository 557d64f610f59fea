using System.Collections.Immutable;
using ScreenStats.Counting.Programs.Cadence;
using ScreenStats.Evaluation.Cadence.Draws;
using ScreenStats.Evaluation.Cadence.Inputs;
using ScreenStats.Evaluation.Cadence.Options;
using ScreenStats.Statistics.Cadence.Courses;
using ScreenStats.Statistics.Cadence.Incidences;

namespace ScreenStats.Evaluation.Cadence.Courses;

/// <summary>Windows, or a course by day, by quadrature: exact, for the central figures.</summary>
internal sealed class ExactCourses : ICourseModel
{
    private readonly CourseSettings course;
    private readonly IsolateOn isolateOn;
    private readonly ImmutableArray<CourseDay> days;
    private readonly ImmutableArray<ScreeningOption> options;
    private readonly ImmutableArray<ObservedGap> gaps;
    private readonly long people;

    public ExactCourses(KnownFigures known, IEnumerable<ScreeningOption> options)
    {
        course = known.Settings.Course!;
        isolateOn = known.Settings.IsolateOn;
        days = [.. course.Days.Select(day => new CourseDay(day.AgeDays, day.Detection, day.Infectiousness))];
        this.options = [.. options];
        gaps = known.ObservedGaps;
        people = known.Data.People;
    }

    public bool KnowsInfectious => course.Kind == CourseKind.ByDay ? days.Any(day => day.Infectiousness > 0) : course.InfectiousFrom is not null;

    public CourseFigures Of(ParameterSet at)
    {
        var infection = Course(at);
        var rules = new ScreeningRules { DelayDays = CourseParts.DaysToIsolation(at, isolateOn), MissCorrelation = CourseParts.Correlation(at) };
        var outcomes = options.Select(option => CourseYield.Of(
            infection, option.Schedule with { Participation = option.IsAsDone ? 1 : at.Known(Parameter.Participation) }, rules with { FollowThrough = option.Acted(at, isolateOn) })).ToArray();
        var exposure = WorkplaceIncidence.Of(0, people, gaps, infection, rules).Exposure;
        return new CourseFigures(
            [.. outcomes.Select(outcome => outcome.DetectionProbability)],
            KnowsInfectious ? [.. outcomes.Zip(options, (outcome, option) => (option.IsNone ? outcome.FractionRemovedBySymptoms : outcome.FractionRemoved).Value ?? 0)] : [],
            KnowsInfectious ? [.. outcomes.Select(outcome => outcome.CaughtBeforeInfectious.Value ?? 0)] : [],
            outcomes.Length == 0 ? 0 : outcomes[0].FractionRemovedBySymptoms.Value ?? 0, infection.InfectiousDays, exposure);
    }

    public double[] InfectiousnessByDay(ParameterSet at)
    {
        const int Points = 16;
        var infection = Course(at);
        return CourseParts.ByDay(infection.InfectiousTo, (from, to) => Enumerable.Range(0, Points).Sum(i => infection.Infectiousness(from + ((i + 0.5) * (to - from) / Points))) * (to - from));
    }

    private InfectionCourse Course(ParameterSet at)
    {
        var infection = course.Kind == CourseKind.ByDay ? InfectionCourse.ByDay(days) : InfectionCourse.Windows(CourseParts.Windows(at), at.Known(Parameter.Sensitivity));
        return infection with { Symptoms = CourseParts.Symptoms(at) };
    }
}
