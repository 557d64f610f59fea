using System.Collections.Immutable;
using ScreenStats.Statistics.Cadence.Courses;
using ScreenStats.Statistics.Cadence.Intervals;

namespace ScreenStats.Statistics.Tests.Cadence.Courses;

/// <summary>Closed form, curve by day with the shape of a box, and individual courses of identical people give the same figures.</summary>
public sealed class LevelsAgreeTests
{
    private static readonly Gen<InfectionWindows> Windows = Gen.Select(Gen.Double[0, 10], Gen.Double[0.01, 20], Gen.Double[0, 10], Gen.Double[0.01, 20])
        .Select((a, w, i, l) => new InfectionWindows(a, a + w, i, i + l));

    [Fact]
    public void The_course_of_a_window_equals_the_closed_form_for_any_interval_sensitivity_and_delay() =>
        Gen.Select(Windows, Gen.Double[0.05, 40], Gen.OneOf(Gen.Const(0.0), Gen.Const(1.0), Gen.Double[0, 1]), Gen.OneOf(Gen.Const(0.0), Gen.Double[0, 30]))
            .Sample((windows, every, s, delay) =>
            {
                var routine = new ScreeningRoutine(every, s);
                foreach (var course in (InfectionCourse[])[InfectionCourse.Windows(windows, s), ByDay(windows, s)])
                {
                    var outcome = CourseYield.Of(course, ScreeningSchedule.Every(every), new ScreeningRules { DelayDays = delay });
                    Near(outcome.DetectionProbability, ScreeningYield.DetectionProbability(routine, windows), 1e-12);
                    // A curve that is 0 throughout does not say where its window lies.
                    if (s > 0) Near(outcome.ScreensTaken, ScreeningYield.ExpectedScreens(routine, windows), 1e-12 * Math.Max(1, windows.DetectableDays / every));
                    Near(outcome.InfectiousDays, windows.InfectiousDays, 1e-12);
                    Near(outcome.InfectiousDaysRemoved, ScreeningYield.InfectiousDaysRemoved(routine, windows, delay), 1e-11);
                    Near(outcome.FractionRemoved.Value, ScreeningYield.FractionRemoved(routine, windows, delay).Value, 1e-11);
                    Near(outcome.CaughtBeforeInfectious.Value, ScreeningYield.IsolatedByAge(routine, windows, delay, windows.InfectiousFrom), 1e-11);
                }
            });

    private static InfectionCourse ByDay(InfectionWindows windows, double sensitivity)
    {
        double At(double age, bool after) =>
            (after ? age >= windows.DetectableFrom && age < windows.DetectableTo : age > windows.DetectableFrom && age <= windows.DetectableTo) ? sensitivity : 0;
        double Passes(double age, bool after) =>
            (after ? age >= windows.InfectiousFrom && age < windows.InfectiousTo : age > windows.InfectiousFrom && age <= windows.InfectiousTo) ? 3 : 0;
        double[] ages = [windows.DetectableFrom, windows.DetectableTo, windows.InfectiousFrom, windows.InfectiousTo];
        return InfectionCourse.ByDay(
        [
            .. ages.Distinct().Order().SelectMany(age => (CourseDay[])
                [new(age, At(age, after: false), Passes(age, after: false)), new(age, At(age, after: true), Passes(age, after: true))]),
        ]);
    }

    private static void Near(double? actual, double? expected, double within)
    {
        actual.Should().NotBeNull();
        Math.Abs(actual!.Value - expected!.Value).Should().BeLessThanOrEqualTo(within, $"{actual} should be {expected}");
    }
}
