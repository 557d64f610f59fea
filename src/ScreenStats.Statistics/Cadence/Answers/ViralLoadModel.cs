using System.Collections.Concurrent;
using System.Collections.Immutable;
using ScreenStats.Statistics.Cadence.Courses;
using ScreenStats.Statistics.Cadence.Courses.ViralLoads;

namespace ScreenStats.Statistics.Cadence.Answers;

/// <summary>Individual courses of the viral load, simulated; a sensitivity is that of a screen taken while the load is at or above the limit of detection.</summary>
public sealed record ViralLoadModel : CourseModel
{
    private const int ProfilePeople = 4000;
    private readonly ConcurrentDictionary<(ScreeningSchedule Schedule, ScreeningRules Rules, double Sensitivity), SimulatedOutcome> known = new();

    /// <summary>Makes a model.</summary>
    /// <param name="courses">How infections run.</param>
    /// <param name="settings">How many people are simulated, how exactly, and from which seed; null: the defaults.</param>
    public ViralLoadModel(ViralLoadCourses courses, ViralLoadSettings? settings = null)
    {
        ArgumentNullException.ThrowIfNull(courses);
        Courses = courses;
        Settings = settings ?? new ViralLoadSettings();
    }

    /// <summary>How infections run.</summary>
    public ViralLoadCourses Courses { get; }

    /// <summary>How many people are simulated, how exactly, and from which seed.</summary>
    public ViralLoadSettings Settings { get; }

    /// <inheritdoc/>
    public override bool HoldsDetection => true;

    /// <inheritdoc/>
    public override bool KnowsInfectiousness => true;

    /// <inheritdoc/>
    public override CourseOutcome? Outcome(ScreeningSchedule schedule, ScreeningRules rules, double? sensitivity) => Simulated(schedule, rules, sensitivity).Outcome;

    /// <summary>The same with the standard errors of the simulation.</summary>
    /// <param name="schedule">The schedule.</param>
    /// <param name="rules">The rules.</param>
    /// <param name="sensitivity">The sensitivity above the limit of detection, in [0, 1]; null: as the courses say.</param>
    /// <returns>The outcome.</returns>
    public SimulatedOutcome Simulated(ScreeningSchedule schedule, ScreeningRules rules, double? sensitivity) =>
        known.GetOrAdd((schedule, rules, sensitivity ?? Courses.SensitivityAboveLimit), one =>
            ViralLoadYield.Simulate(Courses with { SensitivityAboveLimit = one.Sensitivity }, [one.Schedule], one.Rules, Settings)[0]);

    /// <inheritdoc/>
    public override ImmutableArray<double> InfectiousnessByDay()
    {
        var days = new List<double>();
        for (var person = 0; person < ProfilePeople; person++)
        {
            var illness = new Illness(Courses, IllnessDraw.Of(Courses, Settings.Seed, person));
            for (var day = 0; day < illness.InfectiousTo; day++)
            {
                if (days.Count == day) days.Add(0);
                days[day] += Math.Max(0, illness.Tail(day) - illness.Tail(day + 1)) / ProfilePeople;
            }
        }

        return days.Any(weight => weight > 0) ? [.. days] : [];
    }
}
