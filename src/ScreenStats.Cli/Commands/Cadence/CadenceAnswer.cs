using System.Collections.Immutable;
using ScreenStats.Cli.Results;
using ScreenStats.Cli.Results.Cadence;
using ScreenStats.Counting.Programs.Cadence;
using ScreenStats.Statistics;
using ScreenStats.Statistics.Accuracy;
using ScreenStats.Statistics.Cadence.Answers;
using ScreenStats.Statistics.Cadence.Courses;
using ScreenStats.Statistics.Cadence.Courses.ViralLoads;
using ScreenStats.Statistics.Cadence.Intervals;

namespace ScreenStats.Cli.Commands.Cadence;

/// <summary>Answers what was asked of <c>cadence</c>: by the closed forms where they can, else by the course.</summary>
internal static class CadenceAnswer
{
    private const double UsualDetectionLimit = 5;
    private const int SimulatedPeople = 20_000;
    private const int UsualDays = 91;

    /// <summary>True where a course can be put together.</summary>
    public static bool CanAnswer(CadenceAsked asked) => asked.Kind switch
    {
        CourseKind.ByDay => !asked.Days.IsEmpty,
        CourseKind.ViralLoad => true,
        _ => asked is { Window: not null, SensitivityGiven: true },
    };

    public static CadenceResult Of(CadenceAsked asked)
    {
        var known = new CadenceUncertainty { Sensitivity = asked.Sensitivity, Specificity = asked.Specificity, Incidence = asked.Incidence, Seed = asked.Seed };
        var result = asked.ClosedForm ? Closed(asked, known) : ByCourse(asked, known);
        return result with
        {
            Limits = known.Any ? new DrawsItem(UncertainFigures.Method, known.Draws, known.Seed, known.Confidence) : null,
            Taken = asked.Taken.IsEmpty ? null : asked.Taken,
        };
    }

    public static CourseQuestion Question(CadenceAsked asked)
    {
        try
        {
            return new CourseQuestion
            {
                Model = Model(asked),
                Rules = asked.Rules,
                People = asked.People,
                Spread = asked.Reproduction is { } reproduction
                    ? new SpreadQuestion { Reproduction = reproduction, Dispersion = asked.Dispersion, BroughtIn = asked.BroughtIn ?? 1, Days = asked.Horizon ?? UsualDays, ImmunityDays = asked.Immunity }
                    : null,
            };
        }
        catch (ArgumentOutOfRangeException)
        {
            throw new UsageException("--window and --infectious must end within 3,660 days of the infection where a course is computed.");
        }
    }

    private static CadenceResult Closed(CadenceAsked asked, CadenceUncertainty known)
    {
        var window = asked.Window!.Value;
        var question = new CadenceQuestion
        {
            DetectableFrom = window.Lower, DetectableTo = window.Upper, Infectious = asked.Infectious, DelayDays = asked.DelayDays ?? 0, People = asked.People,
        };
        var options = UncertainCadence.Of(question, known, [.. asked.Ways.Select(way => way.EveryDays)]);
        return Result(asked, [.. asked.Ways.Zip(options, CadenceItem.Of)]);
    }

    private static CadenceResult ByCourse(CadenceAsked asked, CadenceUncertainty known)
    {
        if (asked.Ways.Any(way => way.IsRegular && way.EveryDays < ScreeningSchedule.ShortestInterval))
            throw new UsageException("--every: where a course is computed, at least an hour (1/24 of a day) lies between screens.");
        var question = Question(asked);
        ImmutableArray<ScreeningSchedule> schedules = [.. asked.Ways.Select(way => way.Schedule(asked.Participation ?? 1))];
        var answers = UncertainCadence.Of(question, known, schedules);
        var items = asked.Ways.Zip(answers, (way, answer) => CadenceItem.Of(way, answer.Figures) with
        {
            Course = answer.Outcome is { } outcome ? CourseItem.Of(outcome) : null,
            Spread = answer.Spread is { } spread ? SpreadItem.Of(spread) : null,
        });
        var without = UncertainCadence.WithoutScreening(question, known);
        return Result(asked, [.. items]) with
        {
            Course = Inputs(asked, question, answers, known.Sensitivity?.Value),
            Spread = question.Spread is { } inside ? new SpreadInputs(Figure.Of(inside.Reproduction), inside.Dispersion, inside.BroughtIn, inside.Days, inside.ImmunityDays) : null,
            WithoutScreening = without is null ? null : SpreadItem.Of(without),
        };
    }

    private static CourseModel Model(CadenceAsked asked)
    {
        switch (asked.Kind)
        {
            case CourseKind.ByDay:
                return new ByDayModel(InfectionCourse.ByDay(asked.Days) with { Symptoms = asked.Symptoms });
            case CourseKind.ViralLoad:
                var courses = ViralLoadExample.Respiratory(asked.DetectionLimit ?? UsualDetectionLimit, asked.Infectiousness ?? InfectiousnessFunction.LogAboveThreshold);
                return new ViralLoadModel(courses, new ViralLoadSettings { People = SimulatedPeople, Seed = asked.Seed });
            default:
                return new WindowModel(asked.Window!.Value, asked.Infectious, asked.Symptoms);
        }
    }

    private static CourseInputs Inputs(CadenceAsked asked, CourseQuestion question, ImmutableArray<CourseAnswer> answers, double? sensitivity)
    {
        var load = question.Model as ViralLoadModel;
        return new CourseInputs(
            asked.Kind switch { CourseKind.ByDay => "by-day", CourseKind.ViralLoad => "viral-load", _ => "windows" },
            load is null ? CourseOutcome.ByQuadrature : CourseOutcome.BySimulation)
        {
            File = asked.Kind == CourseKind.ByDay ? asked.CourseFile : null,
            ViralLoads = load?.Courses,
            SimulatedPeople = load?.Settings.People,
            LargestStandardError = load is null ? null : answers.Max(answer => LargestError(load.Simulated(answer.Schedule, question.Rules, sensitivity))),
            Symptoms = asked.Symptoms,
            ConfirmationDelay = asked.ConfirmationDelayDays,
            Misses = asked.MissCorrelation ?? 0,
            Participation = asked.Participation ?? 1,
        };
    }

    private static double LargestError(SimulatedOutcome outcome) =>
        Math.Max(outcome.DetectionError, Math.Max(outcome.RemovedError ?? 0, outcome.CaughtBeforeInfectiousError ?? 0));

    private static CadenceResult Result(CadenceAsked asked, IReadOnlyList<CadenceItem> options)
    {
        var sensitivity = asked.Kind == CourseKind.ByDay ? Figure.Undefined("the course holds it by day")
            : asked is { Kind: CourseKind.ViralLoad, SensitivityGiven: false } ? Figure.Of(1)
            : Of(asked.Sensitivity, UndefinedReason.SensitivityUnknown);
        double[]? window = asked.Kind switch
        {
            CourseKind.ByDay => [InfectionCourse.ByDay(asked.Days).DetectableFrom, InfectionCourse.ByDay(asked.Days).DetectableTo],
            CourseKind.ViralLoad => null,
            _ => [asked.Window!.Value.Lower, asked.Window.Value.Upper],
        };
        return new CadenceResult(
            sensitivity, Of(asked.Specificity, UndefinedReason.SpecificityUnknown), window,
            asked.Kind == CourseKind.ByDay ? [InfectionCourse.ByDay(asked.Days).InfectiousFrom, InfectionCourse.ByDay(asked.Days).InfectiousTo]
                : asked.Infectious is { } infectious ? [infectious.Lower, infectious.Upper] : null,
            asked.DelayDays ?? 0, Of(asked.Incidence, UndefinedReason.IncidenceUnknown),
            Figure.Of(asked.People, UndefinedReason.PeopleUnknown.Describe()), options);
    }

    private static Figure Of(AccuracyStatement? share, UndefinedReason reason) => share is null
        ? Figure.Undefined(reason.Describe())
        : Figure.Of(share.Value).WithLimits(share.LogitVariance > 0 ? share.IntervalAt(0.95) : null);
}
