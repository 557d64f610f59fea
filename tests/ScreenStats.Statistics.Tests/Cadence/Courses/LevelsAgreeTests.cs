using System.Collections.Immutable;
using ScreenStats.Statistics.Cadence.Courses;
using ScreenStats.Statistics.Cadence.Courses.ViralLoads;
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

    [Fact]
    public void The_rows_of_the_closed_forms_come_out_of_the_course_of_a_window_too() =>
        Mismatches.ShouldBeNone([.. ReferenceTable.Load("screening-yields").Where(Fits)], row =>
        {
            var windows = new InfectionWindows(
                row.Number("detectable_from"), row.Number("detectable_to"), row.Number("infectious_from"), row.Number("infectious_to"));
            var outcome = CourseYield.Of(
                InfectionCourse.Windows(windows, row.Number("sensitivity")), ScreeningSchedule.Every(row.Number("every")), new ScreeningRules { DelayDays = row.Number("delay") });
            return
            [
                row.Mismatch("detected", outcome.DetectionProbability),
                row.Mismatch("screens", outcome.ScreensTaken),
                row.Mismatch("removed", outcome.InfectiousDaysRemoved),
                row.Mismatch("fraction", outcome.FractionRemoved.Value),
            ];
        });

    [Fact]
    public void Individual_courses_of_identical_people_equal_the_closed_form_of_their_windows() =>
        Gen.Select(Gen.Double[0, 3], Gen.Double[0.5, 4], Gen.Double[7, 11], Gen.Double[2, 9], Gen.Double[3, 6.9], Gen.Double[3.5, 6.9], Gen.Double[0.2, 30])
            .SelectMany(figures => Gen.Select(Gen.Const(figures), Gen.OneOf(Gen.Const(1.0), Gen.Double[0, 1]), Gen.Double[0, 6]))
            .Sample(
                (figures, s, delay) =>
                {
                    var (start, growth, peak, clearance, limit, infectious, every) = figures;
                    var courses = Identical(start, growth, peak, clearance, limit, infectious, s, InfectiousnessFunction.Step);
                    double Rises(double level) => start + ((level - 3) * growth / (peak - 3));
                    double Falls(double level) => start + growth + ((peak - level) * clearance / (peak - 6));
                    var windows = new InfectionWindows(Rises(limit), Falls(limit), Rises(infectious), Falls(infectious));
                    var routine = new ScreeningRoutine(every, s);
                    var outcome = ViralLoadYield.Simulate(courses, [ScreeningSchedule.Every(every)], new ScreeningRules { DelayDays = delay }, new ViralLoadSettings { People = 3 })[0].Outcome;
                    Near(outcome.DetectionProbability, ScreeningYield.DetectionProbability(routine, windows), 1e-11);
                    Near(outcome.ScreensTaken, ScreeningYield.ExpectedScreens(routine, windows), 1e-9);
                    Near(outcome.InfectiousDays, windows.InfectiousDays, 1e-10);
                    Near(outcome.InfectiousDaysRemoved, ScreeningYield.InfectiousDaysRemoved(routine, windows, delay), 1e-9);
                    Near(outcome.CaughtBeforeInfectious.Value, ScreeningYield.IsolatedByAge(routine, windows, delay, windows.InfectiousFrom), 1e-10);
                },
                iter: 300);

    [Fact]
    public void Individual_courses_of_identical_people_equal_their_course_by_day_under_any_schedule()
    {
        ScreeningSchedule[] schedules =
        [
            ScreeningSchedule.Every(3), ScreeningSchedule.OnWeekdays([DayOfWeek.Monday, DayOfWeek.Thursday]) with { Participation = 0.7, NeverTakePart = 0.2 },
            ScreeningSchedule.Observed([new(1, 5), new(4, 9), new(13, 2)]), ScreeningSchedule.Repeating(11, [0, 1.5, 6]),
        ];
        foreach (var (rho, share) in ((double, double)[])[(0, 0), (0.4, 0), (0.4, 1)])
        {
            // The load rises from day 2 to 4 and falls to level 6 on day 12; where people get symptoms, all do on day 5.5, and isolate.
            var courses = Identical(2, 2, 9, share == 0 ? 8 : 6.5, 5, 6, 0.75, InfectiousnessFunction.LogAboveThreshold) with { SymptomShare = share, SymptomsAfterPeakDays = new UniformRange(1.5, 1.5), SymptomIsolationShare = 1 };
            var byDay = InfectionCourse.ByDay([new(2 + (4.0 / 6), 0.75, 0), new(3, 0.75, 0), new(4, 0.75, 3), new(12, 0.75, 0), new(4 + (4 * 8.0 / 3), 0.75, 0)])
                with { Symptoms = share > 0 ? new SymptomOnset(1, 5.5, 0, 1) : null };
            var rules = new ScreeningRules { DelayDays = 0.8, MissCorrelation = rho };
            foreach (var (simulated, schedule) in ViralLoadYield.Simulate(courses, schedules, rules, new ViralLoadSettings { People = 2 }).Zip(schedules))
            {
                var outcome = CourseYield.Of(byDay, schedule, rules);
                Near(simulated.Outcome.DetectionProbability, outcome.DetectionProbability, 1e-9);
                Near(simulated.Outcome.ScreensTaken, outcome.ScreensTaken, 1e-9);
                Near(simulated.Outcome.InfectiousDays, outcome.InfectiousDays, 1e-12);
                Near(simulated.Outcome.FractionRemoved.Value, outcome.FractionRemoved.Value, 1e-9);
                Near(simulated.Outcome.FractionRemovedBySymptoms.Value, outcome.FractionRemovedBySymptoms.Value, 1e-12);
                Near(simulated.Outcome.FractionRemovedByScreening.Value, outcome.FractionRemovedByScreening.Value, 1e-9);
                Near(simulated.Outcome.CaughtBeforeInfectious.Value, outcome.CaughtBeforeInfectious.Value, 1e-9);
                if (share > 0) Near(simulated.Outcome.FoundBeforeOnset.Value, outcome.FoundBeforeOnset.Value, 1e-9);
            }
        }
    }

    private static bool Fits(ReferenceRow row) =>
        row.Text("timing") == "Regular" && row.Number("every") >= ScreeningSchedule.ShortestInterval
        && row.Number("detectable_to") <= InfectionCourse.LongestDays && row.Number("infectious_to") <= InfectionCourse.LongestDays;

    private static ViralLoadCourses Identical(double start, double growth, double peak, double clearance, double limit, double infectious, double sensitivity, InfectiousnessFunction function) => new()
    {
        StartDay = new UniformRange(start, start),
        StartLevel = 3,
        ShortestGrowthDays = growth,
        GrowthShape = 1,
        GrowthScaleDays = 0,
        LongestGrowthDays = growth,
        PeakLevel = new UniformRange(peak, peak),
        ClearanceDays = new UniformRange(clearance, clearance),
        EndLevel = 6,
        SymptomShare = 0,
        SymptomsAfterPeakDays = new UniformRange(0, 0),
        SymptomIsolationShare = 0,
        DetectionLimit = limit,
        SensitivityAboveLimit = sensitivity,
        Infectiousness = function,
        InfectiousLevel = infectious,
    };

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
