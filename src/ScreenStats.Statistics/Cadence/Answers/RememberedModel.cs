using System.Collections.Immutable;
using ScreenStats.Statistics.Cadence.Courses;

namespace ScreenStats.Statistics.Cadence.Answers;

/// <summary>A model that works out each outcome once.</summary>
internal sealed record RememberedModel(CourseModel Inner) : CourseModel
{
    private readonly Dictionary<(ScreeningSchedule Schedule, ScreeningRules Rules, double? Sensitivity), CourseOutcome?> known = [];
    private ImmutableArray<double>? profile;

    public override bool HoldsDetection => Inner.HoldsDetection;

    public override bool KnowsInfectiousness => Inner.KnowsInfectiousness;

    public override ImmutableArray<double> InfectiousnessByDay() => profile ??= Inner.InfectiousnessByDay();

    public override CourseOutcome? Outcome(ScreeningSchedule schedule, ScreeningRules rules, double? sensitivity)
    {
        if (!known.TryGetValue((schedule, rules, sensitivity), out var outcome)) known.Add((schedule, rules, sensitivity), outcome = Inner.Outcome(schedule, rules, sensitivity));
        return outcome;
    }
}
