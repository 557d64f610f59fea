using System.Collections.Immutable;
using ScreenStats.Statistics.Cadence.Courses;
using ScreenStats.Statistics.Cadence.Intervals;

namespace ScreenStats.Statistics.Cadence.Answers;

/// <summary>Ways of screening side by side, against a course of infection.</summary>
/// <remarks>
/// As <see cref="CadenceComparison"/>, which it equals for windows, regular screens and independent misses: a year has 365 days, screens are those taken,
/// false positives count all person-time as uninfected, and infections averted are only in the figures of the spread.
/// </remarks>
public static class CourseComparison
{
    /// <summary>One answer for each schedule.</summary>
    /// <param name="question">What is known.</param>
    /// <param name="schedules">The schedules; each has screens.</param>
    /// <returns>The answers, in the order of the schedules.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its domain, or a schedule without screens.</exception>
    public static ImmutableArray<CourseAnswer> Of(CourseQuestion question, IEnumerable<ScreeningSchedule> schedules)
    {
        ArgumentNullException.ThrowIfNull(question);
        ArgumentNullException.ThrowIfNull(schedules);
        question.Check();
        var profile = question.Spread is null ? [] : question.Model.InfectiousnessByDay();
        return [.. schedules.Select(schedule => Answer(question, schedule, profile))];
    }

    /// <summary>How it spreads where nobody is screened.</summary>
    /// <param name="question">What is known.</param>
    /// <returns>The answer; null where the spread is not asked.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its domain.</exception>
    public static SpreadAnswer? WithoutScreening(CourseQuestion question)
    {
        ArgumentNullException.ThrowIfNull(question);
        question.Check();
        // By its definition the reproduction is that without screening: nothing is to be taken off it.
        var nothing = Estimate.Point(0, CourseOutcome.ByQuadrature);
        return question.Spread is { } spread ? SpreadAnswer.Of(spread, nothing, nothing, question.Model.InfectiousnessByDay(), question.Incidence, question.People, WithoutProfile(question)) : null;
    }

    /// <summary>The reproduction number without screening that goes with a share of infections brought in while screening as now.</summary>
    /// <param name="question">What is known; its spread is not looked at.</param>
    /// <param name="now">How people are screened now.</param>
    /// <param name="broughtIn">The share of infections brought in, in [0, 1].</param>
    /// <returns>(1 - share)(1 - removed by symptoms alone)/(1 - removed now): as many a case causes now, put back to no screening. Undefined where the shares removed are, or nothing is kept.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its domain.</exception>
    public static Estimate ReproductionWithout(CourseQuestion question, ScreeningSchedule now, double broughtIn)
    {
        ArgumentNullException.ThrowIfNull(question);
        ArgumentNullException.ThrowIfNull(now);
        question.Check();
        Guard.Probability(broughtIn);
        if (question.Model.Outcome(now, question.Rules, question.Sensitivity) is not { } outcome) return Estimate.Undefined(UndefinedReason.SensitivityUnknown);
        if (outcome.FractionRemoved.Value is not { } removed || outcome.FractionRemovedBySymptoms.Value is not { } bySymptoms)
            return Estimate.Undefined(question.Model.KnowsInfectiousness ? UndefinedReason.NoInfectiousTime : UndefinedReason.InfectiousTimeUnknown);
        return removed >= 1 ? Estimate.Undefined(UndefinedReason.NoSpread) : Estimate.Point((1 - broughtIn) * (1 - bySymptoms) / (1 - removed), outcome.Method);
    }

    private static CourseAnswer Answer(CourseQuestion question, ScreeningSchedule schedule, ImmutableArray<double> profile)
    {
        if (!(schedule.DuePerDay > 0)) throw new ArgumentOutOfRangeException(nameof(schedule), schedule.DuePerDay, "A schedule to compare must have screens.");
        var outcome = question.Model.Outcome(schedule, question.Rules, question.Sensitivity);
        var method = outcome?.Method ?? CourseOutcome.ByQuadrature;
        var screens = FalseAlarm.DaysPerYear * schedule.TakenPerDay;
        var alarms = screens * (1 - question.Specificity);
        var infections = FalseAlarm.DaysPerYear * question.Incidence;
        var figures = new CadenceOption(1 / schedule.DuePerDay)
        {
            DetectionProbability = Point(outcome?.DetectionProbability, UndefinedReason.SensitivityUnknown),
            InfectiousDaysRemoved = question.Model.KnowsInfectiousness ? Point(outcome?.InfectiousDaysRemoved, UndefinedReason.SensitivityUnknown) : Estimate.Undefined(UndefinedReason.InfectiousTimeUnknown),
            FractionRemoved = Removed(question, outcome),
            ScreensPerPersonYear = screens,
            FalsePositivesPerPersonYear = Point(alarms, UndefinedReason.SpecificityUnknown),
            AnyFalsePositivePerYear = Point(question.Specificity is { } sure ? FalseAlarm.ChanceOfAny(screens, sure) : null, UndefinedReason.SpecificityUnknown),
            TruePositivesPerYear = question.People is null
                ? Estimate.Undefined(UndefinedReason.PeopleUnknown)
                : Point(question.People * infections * outcome?.DetectionProbability, outcome is null ? UndefinedReason.SensitivityUnknown : UndefinedReason.IncidenceUnknown),
            FalsePositivesPerYear = question.People is null ? Estimate.Undefined(UndefinedReason.PeopleUnknown) : Point(question.People * alarms, UndefinedReason.SpecificityUnknown),
            PositivePredictiveValue = Predictive(infections, outcome?.DetectionProbability, alarms, method),
        };
        return new CourseAnswer(schedule, figures, outcome, question.Spread is { } spread ? Spread(question, spread, outcome, profile) : null);

        Estimate Point(double? value, UndefinedReason reason) => value is { } known ? Estimate.Point(known, method) : Estimate.Undefined(reason);
    }

    private static SpreadAnswer Spread(CourseQuestion question, SpreadQuestion spread, CourseOutcome? outcome, ImmutableArray<double> profile) => SpreadAnswer.Of(
        spread, Removed(question, outcome), outcome?.FractionRemovedBySymptoms ?? Estimate.Undefined(UndefinedReason.SensitivityUnknown), profile, question.Incidence, question.People,
        WithoutProfile(question));

    private static UndefinedReason WithoutProfile(CourseQuestion question) =>
        question.Model.KnowsInfectiousness ? UndefinedReason.NoInfectiousTime : UndefinedReason.InfectiousTimeUnknown;

    private static Estimate Removed(CourseQuestion question, CourseOutcome? outcome) =>
        !question.Model.KnowsInfectiousness ? Estimate.Undefined(UndefinedReason.InfectiousTimeUnknown)
        : outcome is null ? Estimate.Undefined(UndefinedReason.SensitivityUnknown)
        : outcome.FractionRemoved;

    private static Estimate Predictive(double? infections, double? found, double? alarms, string method)
    {
        if (found is null) return Estimate.Undefined(UndefinedReason.SensitivityUnknown);
        if (alarms is null) return Estimate.Undefined(UndefinedReason.SpecificityUnknown);
        if (infections is not { } incoming) return Estimate.Undefined(UndefinedReason.IncidenceUnknown);
        var real = incoming * found.Value;
        return real + alarms > 0 ? Estimate.Point(real / (real + alarms.Value), method) : Estimate.Undefined(UndefinedReason.NoPositiveResultPossible);
    }
}
