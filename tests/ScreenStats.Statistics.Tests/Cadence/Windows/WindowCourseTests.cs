using System.Collections.Immutable;
using ScreenStats.Statistics.Cadence.Courses;
using ScreenStats.Statistics.Cadence.Incidences;
using ScreenStats.Statistics.Cadence.Intervals;
using ScreenStats.Statistics.Cadence.Windows;

namespace ScreenStats.Statistics.Tests.Cadence.Windows;

public sealed class WindowCourseTests
{
    private static readonly ImmutableArray<ObservedGap> Gaps = [new(1, 271), new(2, 29), new(3, 137), new(4, 82), new(7, 32), new(11, 6), new(14, 6), new(21, 1), new(60, 1)];

    private static readonly ScreeningSchedule[] Schedules =
    [
        ScreeningSchedule.Never, ScreeningSchedule.Every(365.0 / 12), ScreeningSchedule.Every(14), ScreeningSchedule.Every(7), ScreeningSchedule.Every(3.5), ScreeningSchedule.Every(2.7),
        ScreeningSchedule.Every(2), ScreeningSchedule.Every(1), ScreeningSchedule.Every(0.3), ScreeningSchedule.OnWeekdays([DayOfWeek.Monday, DayOfWeek.Thursday]),
        ScreeningSchedule.OnWeekdays([DayOfWeek.Monday, DayOfWeek.Tuesday, DayOfWeek.Wednesday, DayOfWeek.Thursday, DayOfWeek.Friday]), ScreeningSchedule.Observed(Gaps),
    ];

    private static readonly ScreenCounts[] Counts = [.. Schedules.Select(schedule => ScreenCounts.Of(schedule, 30))];

    private static readonly EarlierScreens Earlier = EarlierScreens.Of(40, Gaps, 30);

    [Fact]
    public void It_agrees_with_the_exact_quadrature_for_every_schedule_within_the_error_that_it_states()
    {
        // Random courses over the whole domain, the edges among them; CourseYield and WorkplaceIncidence are checked against other sources themselves.
        var random = new Random(20261);
        for (var trial = 0; trial < 300; trial++)
        {
            var from = random.NextDouble() * 4;
            var infectious = random.NextDouble() * 5;
            var windows = new InfectionWindows(from, from + (trial % 17 == 0 ? 0 : random.NextDouble() * 20), infectious, infectious + 0.2 + (random.NextDouble() * 10));
            var sensitivity = trial % 20 == 0 ? 1 : trial % 21 == 0 ? 0 : random.NextDouble();
            var rules = new ScreeningRules { DelayDays = trial % 5 == 0 ? 0 : random.NextDouble() * 3, MissCorrelation = trial % 3 == 0 ? 0 : random.NextDouble() * 0.8 };
            var taken = trial % 4 == 0 ? 1 : random.NextDouble();
            SymptomOnset? symptoms = trial % 3 == 1 ? null : new SymptomOnset(random.NextDouble(), 1 + (6 * random.NextDouble()), trial % 10 == 0 ? 0 : 0.1 + (random.NextDouble() / 2), random.NextDouble());
            var exact = InfectionCourse.Windows(windows, sensitivity) with { Symptoms = symptoms };
            var quick = new WindowCourse(windows, sensitivity, symptoms, rules.DelayDays, rules.MissCorrelation);
            var tolerance = symptoms?.LogSpread == 0 ? 0.005 : 0.002;
            for (var index = 0; index < Schedules.Length; index++)
            {
                var expected = CourseYield.Of(exact, Schedules[index] with { Participation = taken }, rules);
                var outcome = quick.Of(Counts[index], taken);
                outcome.Detection.Should().BeApproximately(expected.DetectionProbability, tolerance);
                outcome.FractionRemoved.Should().BeApproximately(expected.FractionRemoved.Value!.Value, tolerance);
                outcome.CaughtBeforeInfectious.Should().BeApproximately(expected.CaughtBeforeInfectious.Value!.Value, 1e-9);
                quick.RemovedBySymptoms.Should().BeApproximately(expected.FractionRemovedBySymptoms.Value!.Value, 1e-9);
            }

            var exposure = WorkplaceIncidence.Of(0, 40, Gaps, exact, rules).Exposure;
            quick.Exposure(Earlier).Should().BeApproximately(exposure, 1e-6 * Math.Max(1, exposure));
        }
    }

    [Fact]
    public void Without_symptoms_and_repeated_misses_it_is_the_closed_form()
    {
        var windows = new InfectionWindows(3, 13, 3, 10);
        var routine = new ScreeningRoutine(7, 0.8);
        var outcome = new WindowCourse(windows, 0.8, null, 0, 0).Of(ScreenCounts.Of(ScreeningSchedule.Every(7), 10), 1);

        // Section 4.1, first row: 0.868571 and 2.8 of 7 days.
        outcome.Detection.Should().BeApproximately(ScreeningYield.DetectionProbability(routine, windows), 1e-12).And.BeApproximately(0.868571, 5e-7);
        outcome.FractionRemoved.Should().BeApproximately(0.4, 5e-4);
    }

    [Fact]
    public void The_delay_may_be_longer_than_the_infection_and_the_windows_without_length()
    {
        var late = new WindowCourse(new InfectionWindows(2, 10, 2, 8), 1, null, 20, 0).Of(ScreenCounts.Of(ScreeningSchedule.Every(1), 8), 1);
        late.Should().Be(new WindowOutcome(1, 0, 0));
        var nothing = new WindowCourse(new InfectionWindows(2, 2, 5, 5), 1, null, 0, 0).Of(ScreenCounts.Of(ScreeningSchedule.Every(1), 8), 1);
        nothing.Should().Be(new WindowOutcome(0, 0, 0));
    }

    [Fact]
    public void Figures_outside_their_domain_are_named()
    {
        FluentActions.Invoking(() => ScreenCounts.Of(ScreeningSchedule.Every(1), 201)).Should().Throw<ArgumentOutOfRangeException>().WithParameterName("longestDays");
        FluentActions.Invoking(() => EarlierScreens.Of(-1, Gaps, 10)).Should().Throw<ArgumentOutOfRangeException>();
        FluentActions.Invoking(() => EarlierScreens.Of(1, Gaps, double.NaN)).Should().Throw<ArgumentOutOfRangeException>().WithParameterName("longestDays");
        FluentActions.Invoking(() => new WindowCourse(new InfectionWindows(0, 300, 0, 1), 1, null, 0, 0)).Should().Throw<ArgumentOutOfRangeException>().WithParameterName("windows");
        FluentActions.Invoking(() => new WindowCourse(new InfectionWindows(0, 3, 0, 1), 1, null, 0, 1)).Should().Throw<ArgumentOutOfRangeException>().WithParameterName("missCorrelation");
        FluentActions.Invoking(() => new WindowCourse(new InfectionWindows(0, 3, 0, 1), 1.1, null, 0, 0)).Should().Throw<ArgumentOutOfRangeException>();
    }
}
