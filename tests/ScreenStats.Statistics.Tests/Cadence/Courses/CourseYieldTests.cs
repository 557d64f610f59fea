using System.Collections.Immutable;
using ScreenStats.Statistics.Cadence.Courses;
using ScreenStats.Statistics.Cadence.Intervals;

namespace ScreenStats.Statistics.Tests.Cadence.Courses;

public sealed class CourseYieldTests
{
    private static readonly InfectionCourse Windows = InfectionCourse.Windows(new InfectionWindows(2, 12, 3, 10), 0.7);

    private static readonly InfectionCourse Days = InfectionCourse.ByDay(
        [new(1, 0, 0), new(3, 0.4, 0), new(5, 0.9, 2), new(8, 0.8, 1), new(12, 0.3, 0), new(20, 0, 0)]);

    private static readonly SymptomOnset Symptoms = new(0.6, 5, 0.4, 0.8);

    [Fact]
    public void Every_row_of_the_reference_table_is_met() => Mismatches.ShouldBeNone(ReferenceTable.Load("course-yields"), row =>
    {
        var outcome = CourseYield.Of(Course(row), Schedule(row), Rules(row));
        return
        [
            row.Mismatch("detected", outcome.DetectionProbability),
            row.Mismatch("screens", outcome.ScreensTaken),
            row.Mismatch("days", outcome.InfectiousDays),
            row.Mismatch("removed", outcome.FractionRemoved.Value),
            row.Mismatch("by_symptoms", outcome.FractionRemovedBySymptoms.Value),
            row.Mismatch("by_screening", outcome.FractionRemovedByScreening.Value),
            row.Mismatch("before", outcome.CaughtBeforeInfectious.Value),
            row.Mismatch("before_onset", outcome.FoundBeforeOnset.Value),
        ];
    });

    [Fact]
    public void The_detection_curve_of_a_published_model_gives_its_computed_shares() => Mismatches.ShouldBeNone(ReferenceTable.Load("detection-by-day"), row =>
    {
        var course = LogisticCurve();
        if (row.Has("day")) return [row.Mismatch("detection", course.DetectionChance(row.Number("day")))];
        var schedule = ScreeningSchedule.Every(row.Number("every"));
        var rules = new ScreeningRules { DelayDays = row.Number("delay") };
        var onset = course with { Symptoms = new SymptomOnset(1, Math.Exp(1.621), 0.418, 0) };
        return
        [
            row.Mismatch("within_seven_days", CourseYield.IsolatedByAge(course, schedule, rules, 7)),
            row.Mismatch("before_onset", CourseYield.Of(onset, schedule, rules).FoundBeforeOnset.Value),
        ];
    });

    [Fact]
    public void The_same_screens_written_in_different_ways_give_the_same_figures()
    {
        foreach (var course in (InfectionCourse[])[Windows, Days, Days with { Symptoms = Symptoms }])
        {
            foreach (var rules in (ScreeningRules[])[new() { DelayDays = 0.7 }, new() { DelayDays = 0.7, MissCorrelation = 0.4 }])
            {
                Same(ScreeningSchedule.Every(3.5), ScreeningSchedule.Repeating(7, [1, 4.5]));
                Same(ScreeningSchedule.Every(7), ScreeningSchedule.OnWeekdays([DayOfWeek.Wednesday]));
                Same(ScreeningSchedule.Every(1), ScreeningSchedule.OnWeekdays(Enum.GetValues<DayOfWeek>()));
                Same(ScreeningSchedule.OnWeekdays([DayOfWeek.Monday, DayOfWeek.Thursday]), ScreeningSchedule.Repeating(7, [0, 3]));
                Same(ScreeningSchedule.OnWeekdays([DayOfWeek.Sunday, DayOfWeek.Wednesday]), ScreeningSchedule.Repeating(7, [0, 3]));
                Same(ScreeningSchedule.Every(3), ScreeningSchedule.Observed([new(3, 17)]));
                Same(ScreeningSchedule.Every(2) with { Participation = 0 }, ScreeningSchedule.Never);
                Same(ScreeningSchedule.Every(2) with { NeverTakePart = 1 }, ScreeningSchedule.Never);
                Same(ScreeningSchedule.Observed([new(4, 0)]), ScreeningSchedule.Never);
                Same(ScreeningSchedule.Observed([new(4, 3), new(7, 2)]), ScreeningSchedule.Observed([new(7, 2), new(4, 1), new(9, 0), new(4, 2)]));

                void Same(ScreeningSchedule one, ScreeningSchedule other) => ShouldBeNear(CourseYield.Of(course, one, rules), CourseYield.Of(course, other, rules), 1e-9);
            }
        }
    }

    [Fact]
    public void Schedules_are_equal_where_all_their_figures_are()
    {
        ScreeningSchedule Of(int days, double participation) => ScreeningSchedule.Observed([new(days, 3), new(9, 1)]) with { Participation = participation };
        Of(4, 0.5).Should().Be(Of(4, 0.5));
        Of(4, 0.5).GetHashCode().Should().Be(Of(4, 0.5).GetHashCode());
        Of(4, 0.5).Should().NotBe(Of(5, 0.5)).And.NotBe(Of(4, 0.6));
        ScreeningSchedule.Every(7).Should().Be(ScreeningSchedule.Repeating(7, [0])).And.NotBe(ScreeningSchedule.Every(7) with { NeverTakePart = 0.1 });
        ScreeningSchedule.OnWeekdays([DayOfWeek.Monday, DayOfWeek.Thursday]).Should().Be(ScreeningSchedule.OnWeekdays([DayOfWeek.Thursday, DayOfWeek.Monday, DayOfWeek.Monday]));
        ScreeningSchedule.OnWeekdays([DayOfWeek.Monday, DayOfWeek.Thursday]).DuePerDay.Should().BeApproximately(2 / 7.0, 1e-15);
        ScreeningSchedule.Observed([new(2, 3), new(9, 1)]).DuePerDay.Should().BeApproximately(4 / 15.0, 1e-15);
        (ScreeningSchedule.Every(2) with { Participation = 0.8, NeverTakePart = 0.25 }).TakenPerDay.Should().BeApproximately(0.3, 1e-15);
        ScreeningSchedule.Never.DuePerDay.Should().Be(0);
    }

    [Fact]
    public void A_course_with_more_points_on_its_lines_gives_the_same_figures_as_closely_as_is_stated()
    {
        CourseDay[] points = [new(1, 0, 0), new(2, 0.3, 0), new(5, 0.9, 2), new(8, 0.8, 1), new(12, 0.3, 0), new(20, 0, 0)];
        CourseDay[] finer =
        [
            .. points.Zip(points.Skip(1)).SelectMany(pair => Enumerable.Range(0, 20).Select(part => new CourseDay(
                Between(pair.First.AgeDays, pair.Second.AgeDays, part), Between(pair.First.Detection, pair.Second.Detection, part), Between(pair.First.Infectiousness, pair.Second.Infectiousness, part)))),
            points[^1],
        ];
        foreach (var every in (double[])[0.25, 1, 2, 3.5, 7, 30.4])
        {
            foreach (var symptoms in (SymptomOnset?[])[null, new(0.7, 5, 0, 0.9), new(0.7, 5, 0.05, 0.9), new(0.7, 5, 0.42, 0.9), new(0.7, 5, 0.9, 0.9)])
            {
                var rules = new ScreeningRules { DelayDays = 0.6 };
                ShouldBeNear(
                    CourseYield.Of(InfectionCourse.ByDay([.. points]) with { Symptoms = symptoms }, ScreeningSchedule.Every(every), rules),
                    CourseYield.Of(InfectionCourse.ByDay([.. finer]) with { Symptoms = symptoms }, ScreeningSchedule.Every(every), rules),
                    symptoms is { LogSpread: > 0 } ? 1e-8 : 1e-12);
            }
        }

        static double Between(double from, double to, int part) => from + ((to - from) * part / 20);
    }

    [Fact]
    public void Missed_screens_and_positives_not_followed_up_act_as_a_lower_sensitivity_where_misses_are_independent() =>
        Gen.Select(Gen.Double[0, 1], Gen.Double[0.3, 20], Gen.Double[0, 4], Gen.Bool).Sample((share, every, delay, symptoms) =>
        {
            var windows = new InfectionWindows(2, 12, 3, 10);
            InfectionCourse Of(double s) => InfectionCourse.Windows(windows, s) with { Symptoms = symptoms ? Symptoms : null };
            var rules = new ScreeningRules { DelayDays = delay };
            var expected = CourseYield.Of(Of(0.7 * share), ScreeningSchedule.Every(every), rules);
            foreach (var outcome in (CourseOutcome[])
                [
                    CourseYield.Of(Of(0.7), ScreeningSchedule.Every(every) with { Participation = share }, rules),
                    CourseYield.Of(Of(0.7), ScreeningSchedule.Every(every), rules with { FollowThrough = share }),
                ])
            {
                outcome.FractionRemoved.Value.Should().BeApproximately(expected.FractionRemoved.Value!.Value, 1e-12);
                outcome.DetectionProbability.Should().BeApproximately(expected.DetectionProbability, 1e-12);
            }
        });

    [Fact]
    public void Figures_stay_within_bounds_and_more_screens_or_faster_results_never_do_worse() =>
        Gen.Select(Gen.Double[0.2, 30], Gen.Double[0, 8], Gen.Double[0, 1], Gen.Double[0, 0.95], Gen.Bool, Gen.Int[2, 4]).Sample((every, delay, participation, rho, symptoms, times) =>
        {
            var course = Days with { Symptoms = symptoms ? Symptoms : null };
            var rules = new ScreeningRules { DelayDays = delay, MissCorrelation = rho };
            var schedule = ScreeningSchedule.Every(every) with { Participation = participation };
            var outcome = CourseYield.Of(course, schedule, rules);
            var (both, alone, own) = (outcome.FractionRemoved.Value!.Value, outcome.FractionRemovedByScreening.Value!.Value, outcome.FractionRemovedBySymptoms.Value!.Value);
            return both is >= 0 and <= 1 && both >= Math.Max(alone, own) - 1e-9 && both <= alone + own + 1e-9
                && outcome.DetectionProbability is >= 0 and <= 1
                && outcome.InfectiousDaysRemovedBeyondSymptoms >= 0 && outcome.InfectiousDaysRemoved <= outcome.InfectiousDays
                && CourseYield.Of(course, ScreeningSchedule.Every(every * times) with { Participation = participation }, rules).FractionRemoved.Value <= both + 1e-8
                && CourseYield.Of(course, schedule, rules with { DelayDays = delay + 0.5 }).FractionRemoved.Value <= both + 1e-9
                && CourseYield.Of(course, schedule, rules with { MissCorrelation = 0 }).DetectionProbability >= CourseYield.Of(course with { Symptoms = null }, schedule, rules).DetectionProbability - (symptoms ? 1 : 1e-7);
        });

    [Fact]
    public void Repeated_misses_keep_the_chance_of_one_screen_and_near_one_the_same_people_are_always_missed()
    {
        foreach (var rho in (double[])[0, 0.3, 0.9, 0.999, 0.9999999])
        {
            var rules = new ScreeningRules { MissCorrelation = rho };
            CourseYield.Of(Windows, ScreeningSchedule.Every(20), rules).DetectionProbability.Should().BeApproximately(0.7 * 10 / 20, 1e-8, "one screen at most falls into the window");
            CourseYield.Of(Days, ScreeningSchedule.Every(40), rules).DetectionProbability
                .Should().BeApproximately(CourseYield.Of(Days, ScreeningSchedule.Every(40), new ScreeningRules()).DetectionProbability, 2e-8);
        }

        var always = CourseYield.Of(Windows, ScreeningSchedule.Every(1), new ScreeningRules { MissCorrelation = 0.99999 });
        always.DetectionProbability.Should().BeInRange(0.7, 0.71, "three in ten are missed each time");
        CourseYield.Of(Windows, ScreeningSchedule.Every(1), new ScreeningRules()).DetectionProbability.Should().BeGreaterThan(0.99999);
    }

    [Fact]
    public void Isolation_on_confirmation_adds_its_delay_and_isolation_on_the_screen_does_not()
    {
        var schedule = ScreeningSchedule.Every(2);
        ShouldBeNear(
            CourseYield.Of(Windows, schedule, new ScreeningRules { DelayDays = 0.5, ConfirmatoryDelayDays = 1.5, IsolateOn = IsolationTrigger.Confirmation }),
            CourseYield.Of(Windows, schedule, new ScreeningRules { DelayDays = 2 }), 1e-14);
        ShouldBeNear(
            CourseYield.Of(Windows, schedule, new ScreeningRules { DelayDays = 0.5, ConfirmatoryDelayDays = 1.5 }),
            CourseYield.Of(Windows, schedule, new ScreeningRules { DelayDays = 0.5 }), 1e-14);
    }

    [Fact]
    public void Onset_on_one_day_cuts_the_infectious_time_there()
    {
        var course = Windows with { Symptoms = new SymptomOnset(0.5, 6, 0, 1) };
        CourseYield.Of(course, ScreeningSchedule.Never, new ScreeningRules()).FractionRemoved.Value.Should().BeApproximately(0.5 * 4 / 7, 1e-14);

        // Who isolates on day 6 is screened on days 2 to 6 only; the others on days 2 to 12.
        var outcome = CourseYield.Of(course, ScreeningSchedule.Every(5), new ScreeningRules());
        outcome.DetectionProbability.Should().BeApproximately((0.5 * 0.7 * 4 / 5) + (0.5 * 0.91), 1e-13);
        outcome.FoundBeforeOnset.Value.Should().BeApproximately(0.7 * 4 / 5, 1e-13);
        var almost = CourseYield.Of(course with { Symptoms = new SymptomOnset(0.5, 6, 1e-4, 1) }, ScreeningSchedule.Every(5), new ScreeningRules());
        ShouldBeNear(outcome, almost, 1e-3);
    }

    [Fact]
    public void Extremes_give_right_or_undefined_figures_and_never_what_is_no_number()
    {
        ScreeningSchedule[] schedules =
        [
            ScreeningSchedule.Never, ScreeningSchedule.Every(ScreeningSchedule.ShortestInterval), ScreeningSchedule.Every(1e9), ScreeningSchedule.OnWeekdays([DayOfWeek.Friday]),
            ScreeningSchedule.Observed([new(1, long.MaxValue / 40_000), new(36_525, 1)]), ScreeningSchedule.Every(3) with { Participation = 0 },
            ScreeningSchedule.Every(3) with { NeverTakePart = 1 }, ScreeningSchedule.Every(3) with { Participation = 1e-300 },
        ];
        ScreeningRules[] rules =
        [
            new(), new() { DelayDays = 1e9 }, new() { DelayDays = 30, MissCorrelation = 0.999999 }, new() { FollowThrough = 0 },
            new() { ConfirmatoryDelayDays = 3, IsolateOn = IsolationTrigger.Confirmation, MissCorrelation = 1e-18 },
        ];
        InfectionCourse[] plain =
        [
            Windows, Days, InfectionCourse.ByDay([]), InfectionCourse.ByDay([new(3, 0.5, 1)]), InfectionCourse.ByDay([new(0, 0, 0), new(9, 0, 0)]),
            InfectionCourse.ByDay([new(0, 1, 0), new(9, 1, 0)]), InfectionCourse.ByDay([new(2, 0, 1e15), new(2, 0.3, 1e-300), new(9, 1e-300, 1e15)]),
            InfectionCourse.Windows(new InfectionWindows(3, 3, 4, 9), 1), InfectionCourse.Windows(new InfectionWindows(3, 9, 4, 4), 1),
            InfectionCourse.Windows(new InfectionWindows(0, 10, 0, 10), 0), InfectionCourse.Windows(new InfectionWindows(0, 10, 0, 10), 1),
        ];
        SymptomOnset?[] onsets = [null, new(1, 5, 0.4, 1), new(1, 1e-9, 2, 1), new(1, 3660, 2, 1), new(0, 5, 0.4, 1), new(0.5, 5, 0, 0.5), new(0.5, 5, 1e-12, 0.5)];
        foreach (var course in plain.SelectMany(one => onsets.Select(onset => one with { Symptoms = onset })))
        {
            foreach (var outcome in schedules.SelectMany(schedule => rules.Select(rule => CourseYield.Of(course, schedule, rule))))
            {
                double?[] figures =
                [
                    outcome.DetectionProbability, outcome.FractionRemoved.Value, outcome.FractionRemovedBySymptoms.Value, outcome.FractionRemovedByScreening.Value,
                    outcome.CaughtBeforeInfectious.Value, outcome.FoundBeforeOnset.Value,
                ];
                figures.Should().OnlyContain(figure => figure == null || (figure >= 0 && figure <= 1));
                double.IsFinite(outcome.ScreensTaken + outcome.InfectiousDays + outcome.InfectiousDaysRemoved).Should().BeTrue();
                (outcome.FractionRemoved.Reason == UndefinedReason.NoInfectiousTime).Should().Be(course.InfectiousDays == 0);
                (outcome.FoundBeforeOnset.Reason == UndefinedReason.NoSymptoms).Should().Be(course.Symptoms is not { Share: > 0 });
            }
        }

        CourseYield.Of(InfectionCourse.Windows(new InfectionWindows(0, 10, 0, 10), 1), ScreeningSchedule.Every(7), new ScreeningRules()).DetectionProbability.Should().BeApproximately(1, 1e-14);
        CourseYield.Of(Windows, ScreeningSchedule.Every(1), new ScreeningRules { DelayDays = 8 }).InfectiousDaysRemoved.Should().Be(0, "the delay outlasts the infectious time");
        CourseYield.Of(Windows, ScreeningSchedule.Every(1000), new ScreeningRules()).DetectionProbability.Should().BeApproximately(0.007, 1e-15);
    }

    [Fact]
    public void The_chance_to_be_isolated_by_an_age_is_that_of_the_closed_form_and_rises_to_detection()
    {
        var windows = new InfectionWindows(2, 12, 3, 10);
        foreach (var age in (double[])[0, 2, 3.3, 7, 12, 13.5, 400])
        {
            CourseYield.IsolatedByAge(Windows, ScreeningSchedule.Every(3), new ScreeningRules { DelayDays = 1 }, age)
                .Should().BeApproximately(ScreeningYield.IsolatedByAge(new ScreeningRoutine(3, 0.7), windows, 1, age), 1e-12);
        }

        CourseYield.IsolatedByAge(Windows with { Symptoms = new SymptomOnset(0.5, 4, 0.3, 1) }, ScreeningSchedule.Never, new ScreeningRules(), 4).Should().BeApproximately(0.25, 1e-12);
    }

    [Fact]
    public void Figures_outside_their_domain_are_refused_by_name()
    {
        var schedule = ScreeningSchedule.Every(2);
        var calls = new (Action Call, string Name)[]
        {
            (() => _ = new CourseDay(-1, 0.5, 1), "ageDays"), (() => _ = new CourseDay(4000, 0.5, 1), "ageDays"), (() => _ = new CourseDay(1, 1.5, 1), "detection"), (() => _ = new CourseDay(1, 0.5, double.NaN), "infectiousness"),
            (() => _ = new SymptomOnset(1.1, 5, 0.4, 1), "share"), (() => _ = new SymptomOnset(1, 0, 0.4, 1), "medianDays"), (() => _ = new SymptomOnset(1, 5, 2.1, 1), "logSpread"), (() => _ = new SymptomOnset(1, 5, 0.4, -1), "isolationShare"),
            (() => _ = new ObservedGap(0, 3), "days"), (() => _ = new ObservedGap(2, -3), "count"),
            (() => InfectionCourse.ByDay([new(2, 0, 0), new(1, 0, 0)]), "days"), (() => InfectionCourse.ByDay([new(2, 0, 0), new(2, 0, 0), new(2, 0, 0)]), "days"),
            (() => InfectionCourse.Windows(new InfectionWindows(0, 4000, 0, 1), 1), "windows"), (() => InfectionCourse.Windows(InfectionWindows.Same(3), 2), "sensitivity"), (() => Windows.DetectionChance(-1), "ageDays"),
            (() => ScreeningSchedule.Every(0.04), "days"), (() => ScreeningSchedule.Every(double.NaN), "days"), (() => ScreeningSchedule.OnWeekdays([]), "at"), (() => ScreeningSchedule.OnWeekdays([(DayOfWeek)7]), "weekdays"),
            (() => ScreeningSchedule.Repeating(7, [3, 1]), "at"), (() => ScreeningSchedule.Repeating(7, [7]), "at"), (() => ScreeningSchedule.Repeating(7, [0, 6.99]), "at"), (() => ScreeningSchedule.Repeating(0, [0]), "periodDays"),
            (() => CourseYield.Of(Windows, schedule with { Participation = 2 }, new ScreeningRules()), "Participation"), (() => CourseYield.Of(Windows, schedule with { NeverTakePart = -1 }, new ScreeningRules()), "NeverTakePart"),
            (() => CourseYield.Of(Windows, schedule, new ScreeningRules { DelayDays = -1 }), "DelayDays"), (() => CourseYield.Of(Windows, schedule, new ScreeningRules { MissCorrelation = 1 }), "MissCorrelation"),
            (() => CourseYield.Of(Windows, schedule, new ScreeningRules { FollowThrough = 1.5 }), "FollowThrough"), (() => CourseYield.Of(Windows, schedule, new ScreeningRules { IsolateOn = (IsolationTrigger)5 }), "IsolateOn"),
            (() => CourseYield.IsolatedByAge(Windows, schedule, new ScreeningRules(), -1), "ageDays"),
        };
        foreach (var (call, name) in calls) call.Should().Throw<ArgumentOutOfRangeException>().WithParameterName(name);
    }

    /// <summary>The logistic detection curve of Hellewell et al., BMC Med 2021;19:106 (parameters from memory), by tenths of a day.</summary>
    private static InfectionCourse LogisticCurve() => InfectionCourse.ByDay(
    [
        .. Enumerable.Range(0, 301).Select(tenth =>
        {
            var (x, turn) = (tenth / 10.0, 3.18);
            var logit = 1.51 + (2.19 * (x - turn)) + (x > turn ? -1.1 * 2.19 * (x - turn) : 0);
            return new CourseDay(x, 1 / (1 + Math.Exp(-logit)), 1);
        }),
    ]);

    internal static InfectionCourse Course(ReferenceRow row)
    {
        var (ages, detection) = (row.Numbers("detection_ages"), row.Numbers("detection"));
        var (spreadAges, spread) = (row.Numbers("spread_ages"), row.Numbers("spread"));
        var symptoms = row.Numbers("symptoms");

        // Both curves on the knots of both, each knot twice: the value before it and the value from it on.
        CourseDay[] days =
        [
            .. ages.Concat(spreadAges).Distinct().Order().SelectMany(age => (CourseDay[])
                [new(age, At(ages, detection, age, after: false), At(spreadAges, spread, age, after: false)), new(age, At(ages, detection, age, after: true), At(spreadAges, spread, age, after: true))]),
        ];
        return InfectionCourse.ByDay([.. days]) with { Symptoms = symptoms.Count == 0 ? null : new SymptomOnset(symptoms[0], symptoms[1], symptoms[2], symptoms[3]) };
    }

    private static double At(IReadOnlyList<double> ages, IReadOnlyList<double> values, double age, bool after)
    {
        for (var i = 0; i < ages.Count - 1; i++)
        {
            if (after ? age >= ages[i] && age < ages[i + 1] : age > ages[i] && age <= ages[i + 1])
            {
                var part = (age - ages[i]) / (ages[i + 1] - ages[i]);
                return (values[i] * (1 - part)) + (values[i + 1] * part);
            }
        }

        return 0;
    }

    internal static ScreeningSchedule Schedule(ReferenceRow row)
    {
        var gaps = row.Numbers("gaps");
        var schedule = gaps.Count > 0
            ? ScreeningSchedule.Observed([.. Enumerable.Range(0, gaps.Count / 2).Select(i => new ObservedGap((int)gaps[2 * i], (long)gaps[(2 * i) + 1]))])
            : ScreeningSchedule.Repeating(row.Number("period"), [.. row.Numbers("at")]);
        return schedule with { Participation = row.Number("participation"), NeverTakePart = row.Number("never") };
    }

    private static ScreeningRules Rules(ReferenceRow row) =>
        new() { DelayDays = row.Number("delay"), FollowThrough = row.Number("follow_through"), MissCorrelation = row.Number("correlation") };

    private static void ShouldBeNear(CourseOutcome one, CourseOutcome other, double within)
    {
        one.DetectionProbability.Should().BeApproximately(other.DetectionProbability, within);
        one.ScreensTaken.Should().BeApproximately(other.ScreensTaken, within * 10);
        one.InfectiousDaysRemoved.Should().BeApproximately(other.InfectiousDaysRemoved, within * 10);
        one.FractionRemoved.Value.Should().BeApproximately(other.FractionRemoved.Value!.Value, within);
        one.FractionRemovedByScreening.Value.Should().BeApproximately(other.FractionRemovedByScreening.Value!.Value, within);
        one.CaughtBeforeInfectious.Value.Should().BeApproximately(other.CaughtBeforeInfectious.Value!.Value, within);
    }
}
