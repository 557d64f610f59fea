using ScreenStats.Statistics.Cadence.Answers;
using ScreenStats.Statistics.Cadence.Courses;
using ScreenStats.Statistics.Cadence.Courses.ViralLoads;
using ScreenStats.Statistics.Cadence.Intervals;
using ScreenStats.Statistics.Cadence.Windows;

namespace ScreenStats.Statistics.Tests.Cadence.Courses;

public sealed class DaysAwayTests
{
    private static readonly InfectionWindows Windows = new(2, 12, 3, 10);

    [Fact]
    public void People_drawn_one_by_one_are_away_as_long() => Mismatches.ShouldBeNone(ReferenceTable.Load("days-away"), row =>
    {
        var (ages, chances) = (row.Numbers("detection_ages"), row.Numbers("detection"));
        var schedule = ScreeningSchedule.Repeating(row.Number("period"), [.. row.Numbers("at")]) with { Participation = row.Number("participation"), NeverTakePart = row.Number("never") };
        var rules = new ScreeningRules { DelayDays = row.Number("delay"), FollowThrough = row.Number("follow_through"), MissCorrelation = row.Number("correlation"), IsolationDays = row.Number("isolation") };
        var course = InfectionCourse.ByDay([.. ages.Zip(chances, (age, chance) => new CourseDay(age, chance, 1))]) with { Symptoms = Onset(row) };
        var outcome = CourseYield.Of(course, schedule, rules);
        double? quick = null;
        if (ages.Count == 2 && schedule.NeverTakePart == 0)
        {
            quick = new WindowCourse(new InfectionWindows(ages[0], ages[1], 0, 1), chances[0], Onset(row), rules.DelayDays, rules.MissCorrelation, rules.IsolationDays)
                .Of(ScreenCounts.Of(schedule, 20), schedule.Participation * rules.FollowThrough).DaysAway;
        }

        return
        [
            row.Mismatch("away", outcome.DaysAway.Value), row.Mismatch("by_symptoms", outcome.DaysAwayBySymptoms.Value),
            quick is null ? null : row.Mismatch("away", quick),
        ];
    });

    [Fact]
    public void Viral_loads_drawn_elsewhere_are_away_as_long() => Mismatches.ShouldBeNone(ReferenceTable.Load("viral-days-away"), row =>
    {
        var onset = row.Numbers("symptoms");
        var loads = ViralLoadExample.Respiratory(row.Number("limit")) with { SymptomShare = onset[0], SymptomIsolationShare = onset[3], SensitivityAboveLimit = row.Number("sensitivity") };
        var schedule = ScreeningSchedule.Repeating(row.Number("period"), [.. row.Numbers("at")]) with { Participation = row.Number("participation") };
        var rules = new ScreeningRules { DelayDays = row.Number("delay"), IsolationDays = row.Number("isolation") };
        var whole = ViralLoadYield.Simulate(loads, [schedule], rules, new ViralLoadSettings { People = 50_000, Seed = 11 })[0].Outcome;
        var some = ViralLoadYield.Simulate(loads, [schedule], rules, new ViralLoadSettings { People = 50_000, Seed = 11, Phases = 8 })[0].Outcome;

        // How many of the people drawn stay home is chance: what is beyond them is compared, and they by themselves.
        var (alone, days) = (row.Number("by_symptoms"), rules.IsolationDays!.Value);
        double Beyond(CourseOutcome outcome) => outcome.DaysAway.Value!.Value - outcome.DaysAwayBySymptoms.Value!.Value + alone;
        whole.DaysAwayBySymptoms.Value!.Value.Should().BeApproximately(alone, 4.5 * Math.Sqrt(alone * (days - alone) / 50_000), row.Id);
        return [row.Mismatch("away", Beyond(whole)), row.Mismatch("away", Beyond(some))];
    });

    [Fact]
    public void The_quick_form_is_the_exact_one_within_what_it_states()
    {
        var random = new Random(8);
        for (var trial = 0; trial < 200; trial++)
        {
            SymptomOnset? symptoms = trial % 4 == 0 ? null : new SymptomOnset(random.NextDouble(), 1 + (8 * random.NextDouble()), trial % 5 == 0 ? 0 : 0.1 + (random.NextDouble() / 2), random.NextDouble());
            var rules = new ScreeningRules { DelayDays = random.NextDouble() * 2, MissCorrelation = trial % 3 == 0 ? 0.3 : 0, IsolationDays = 1 + (9 * random.NextDouble()) };
            var schedule = trial % 2 == 0 ? ScreeningSchedule.Every(1 + (10 * random.NextDouble())) : ScreeningSchedule.OnWeekdays([DayOfWeek.Monday, DayOfWeek.Wednesday, DayOfWeek.Friday]);
            var exact = CourseYield.Of(InfectionCourse.Windows(Windows, 0.7) with { Symptoms = symptoms }, schedule, rules);
            var course = new WindowCourse(Windows, 0.7, symptoms, rules.DelayDays, rules.MissCorrelation, rules.IsolationDays);
            course.Of(ScreenCounts.Of(schedule, 20), 1).DaysAway!.Value.Should().BeApproximately(exact.DaysAway.Value!.Value, 0.002 * rules.IsolationDays!.Value);
            course.DaysAwayBySymptoms!.Value.Should().BeApproximately(exact.DaysAwayBySymptoms.Value!.Value, 1e-12);
        }
    }

    [Fact]
    public void Whoever_would_have_stayed_home_anyway_is_away_the_days_before_as_well_and_no_more()
    {
        // All get symptoms on day 6 and isolate; a sure screen on day 2 to 3, by the place of the infection, is 3 to 4 days earlier.
        var sure = InfectionCourse.Windows(Windows, 1) with { Symptoms = new SymptomOnset(1, 6, 0, 1) };
        var rules = new ScreeningRules { IsolationDays = 7 };
        CourseYield.Of(sure, ScreeningSchedule.Every(1), rules).DaysAway.Value!.Value.Should().BeApproximately(7 + 3.5, 1e-9);
        CourseYield.Of(sure, ScreeningSchedule.Every(1), rules with { IsolationDays = 2 }).DaysAway.Value!.Value.Should().BeApproximately(4, 1e-9, "an isolation that is over before the symptoms is followed by another");
        CourseYield.Of(sure, ScreeningSchedule.Never, rules).DaysAway.Value.Should().Be(7);
        CourseYield.Of(sure with { Symptoms = null }, ScreeningSchedule.Every(1), rules).DaysAway.Value!.Value.Should().BeApproximately(7, 1e-9);
        CourseYield.Of(sure with { Symptoms = null }, ScreeningSchedule.Never, rules).DaysAway.Value.Should().Be(0);
    }

    [Fact]
    public void Where_it_is_not_stated_how_long_that_is_undefined_and_nonsense_is_refused()
    {
        var course = InfectionCourse.Windows(Windows, 0.5);
        CourseYield.Of(course, ScreeningSchedule.Every(7), new ScreeningRules()).DaysAway.Reason.Should().Be(UndefinedReason.NoIsolationTime);
        new WindowCourse(Windows, 0.5, null, 0, 0).DaysAwayBySymptoms.Should().BeNull();
        new WindowCourse(Windows, 0.5, null, 0, 0).Of(ScreenCounts.Of(ScreeningSchedule.Every(7), 20), 1).DaysAway.Should().BeNull();
        FluentActions.Invoking(() => CourseYield.Of(course, ScreeningSchedule.Every(7), new ScreeningRules { IsolationDays = -1 })).Should().Throw<ArgumentOutOfRangeException>().WithParameterName("IsolationDays");
        FluentActions.Invoking(() => new WindowCourse(Windows, 0.5, null, 0, 0, double.NaN)).Should().Throw<ArgumentOutOfRangeException>();
    }

    private static SymptomOnset? Onset(ReferenceRow row)
    {
        var symptoms = row.Numbers("symptoms");
        return symptoms[0] == 0 ? null : new SymptomOnset(symptoms[0], symptoms[1], symptoms[2], symptoms[3]);
    }
}
