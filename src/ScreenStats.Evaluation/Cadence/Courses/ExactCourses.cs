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
    private readonly int? isolationDays;
    private readonly ImmutableArray<CourseDay> days;
    private readonly ImmutableArray<ScreeningOption> options;
    private readonly ImmutableArray<(long People, ImmutableArray<ObservedGap> Gaps, long PersonDays)> sites;

    public ExactCourses(KnownFigures known, IEnumerable<ScreeningOption> options)
    {
        course = known.Settings.Course!;
        isolateOn = known.Settings.IsolateOn;
        isolationDays = known.IsolationDays;
        days = [.. course.Days.Select(day => new CourseDay(day.AgeDays, day.Detection, day.Infectiousness))];
        this.options = [.. options];
        sites = known.Data.SiteGaps;
    }

    public bool KnowsInfectious => course.Kind == CourseKind.ByDay ? days.Any(day => day.Infectiousness > 0) : course.InfectiousFrom is not null;

    public CourseFigures Of(ParameterSet at)
    {
        var infection = Course(at);
        var rules = new ScreeningRules { DelayDays = CourseParts.DaysToIsolation(at, isolateOn), MissCorrelation = CourseParts.Correlation(at), IsolationDays = isolationDays };
        var unscreened = CourseYield.Of(infection, ScreeningSchedule.Never, rules);
        var outcomes = options.Select(option => option.IsAsDone ? Mean(option.Sites.Select(site => (site.PersonDays, One(option, site.Schedule)))) : One(option, option.Schedule)).ToArray();
        var exposure = sites.Sum(site => WorkplaceIncidence.Of(0, site.People, site.Gaps, infection, rules).Exposure);
        return new CourseFigures(
            [.. outcomes.Select(outcome => outcome.Detection)], KnowsInfectious ? [.. outcomes.Select(outcome => outcome.Removed)] : [], KnowsInfectious ? [.. outcomes.Select(outcome => outcome.Caught)] : [],
            unscreened.FractionRemovedBySymptoms.Value ?? 0, infection.InfectiousDays,
            isolationDays is null ? [] : [.. outcomes.Select(outcome => outcome.Away)], unscreened.DaysAwayBySymptoms.Value ?? 0, exposure);

        (double Detection, double Removed, double Caught, double Away) One(ScreeningOption option, ScreeningSchedule schedule)
        {
            var outcome = CourseYield.Of(infection, schedule with { Participation = option.IsAsDone ? 1 : at.Known(Parameter.Participation) }, rules with { DelayDays = CourseParts.DaysToIsolation(at, option.LeavesOn(isolateOn)), FollowThrough = option.Acted(at, isolateOn) });
            return (outcome.DetectionProbability, (option.IsNone ? outcome.FractionRemovedBySymptoms : outcome.FractionRemoved).Value ?? 0, outcome.CaughtBeforeInfectious.Value ?? 0, outcome.DaysAway.Value ?? 0);
        }
    }

    private static (double Detection, double Removed, double Caught, double Away) Mean(IEnumerable<(double Weight, (double Detection, double Removed, double Caught, double Away) Of)> parts)
    {
        var (all, detection, removed, caught, away) = (0.0, 0.0, 0.0, 0.0, 0.0);
        foreach (var (weight, of) in parts)
            (all, detection, removed, caught, away) = (all + weight, detection + (weight * of.Detection), removed + (weight * of.Removed), caught + (weight * of.Caught), away + (weight * of.Away));
        return (detection / all, removed / all, caught / all, away / all);
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
