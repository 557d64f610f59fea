using System.Collections.Immutable;
using System.Globalization;
using ScreenStats.Statistics.Cadence.Courses;
using ScreenStats.Statistics.Cadence.Incidences;
using ScreenStats.Statistics.Cadence.Intervals;

namespace ScreenStats.Statistics.Tests.Cadence.Incidences;

public sealed class WorkplaceIncidenceTests
{
    private static readonly InfectionCourse Box = InfectionCourse.Windows(new InfectionWindows(2, 9, 2, 9), 0.6);
    private static readonly ScreeningRules Plain = new();

    private static readonly Gen<InfectionCourse> Courses = Gen.Select(Gen.Double[0, 1].Array[2, 20], Gen.Bool, Gen.Double[0, 1]).Select((chances, symptoms, share) =>
        InfectionCourse.ByDay([.. chances.Select((chance, day) => new CourseDay(day, chance, 1))])
            with { Symptoms = symptoms ? new SymptomOnset(share, 5, 0.4, 0.7) : null });

    private static readonly Gen<ImmutableArray<ObservedGap>> Gaps = Gen.Select(Gen.Int[1, 40], Gen.Long[0, 500]).Array[1, 8]
        .Select(pairs => pairs.Select(pair => new ObservedGap(pair.Item1, pair.Item2)).ToImmutableArray());

    [Fact]
    public void Every_row_of_the_reference_table_is_met() => Mismatches.ShouldBeNone(ReferenceTable.Load("incidence-exposures"), row =>
    {
        var result = WorkplaceIncidence.Of(
            row.Count("cases"), row.Count("people"), ObservedGaps(row), Course(row), new ScreeningRules { MissCorrelation = row.Number("correlation") }, row.Number("follow_through"));
        return
        [
            row.Mismatch("first", result.FirstScreenDays), row.Mismatch("exposure", result.Exposure), row.Mismatch("detection", result.DetectionProbability.Value),
            row.Mismatch("incidence", result.Incidence.Value), row.Mismatch("lower", result.Incidence.Lower), row.Mismatch("upper", result.Incidence.Upper),
        ];
    });

    [Fact]
    public void The_true_rate_of_simulated_programs_is_met_within_four_standard_errors_and_covered_as_often_as_promised()
    {
        var (covered, programs) = (0, 0);
        foreach (var row in ReferenceTable.Load("incidence-programs"))
        {
            var truth = row.Number("truth");
            long[] cases = [.. row.Text("cases").Split('|').Select(text => long.Parse(text, CultureInfo.InvariantCulture))];
            var results = cases.Select(count => WorkplaceIncidence.Of(
                count, row.Count("people"), ObservedGaps(row), Course(row), new ScreeningRules { MissCorrelation = row.Number("correlation") }, row.Number("follow_through"))).ToList();
            var expected = truth * results[0].Exposure * row.Number("follow_through") * cases.Length;
            var difference = (cases.Sum() - expected) / Math.Sqrt(expected);
            TestContext.Current.SendDiagnosticMessage($"{row.Id}: {difference:F2} standard errors, ratio {cases.Sum() / expected:F3}");
            Math.Abs(difference).Should().BeLessThan(4, row.Id);
            if (cases.Length == 1) continue;
            covered += results.Count(result => result.Incidence.Interval!.Value.Contains(truth));
            programs += results.Count;
        }

        // Garwood's limits cover at least the nominal share.
        programs.Should().BeGreaterThan(3000);
        ((double)covered / programs).Should().BeGreaterThan(0.95 - (4 * Math.Sqrt(0.95 * 0.05 / programs)));
        TestContext.Current.SendDiagnosticMessage($"covered {covered} of {programs}");
    }

    private static InfectionCourse Course(ReferenceRow row)
    {
        double Parse(string text) => double.Parse(text, CultureInfo.InvariantCulture);
        var text = row.Text("course");
        InfectionCourse course;
        if (text.Contains('@', StringComparison.Ordinal))
        {
            double[] parts = [.. text.Replace("..", "@", StringComparison.Ordinal).Split('@').Select(Parse)];
            course = InfectionCourse.Windows(new InfectionWindows(parts[0], parts[1], 0, 1), parts[2]);
        }
        else
        {
            course = InfectionCourse.ByDay([.. text.Split('|').Select(pair => pair.Split(':')).Select(pair => new CourseDay(Parse(pair[0]), Parse(pair[1]), 1))]);
        }

        return row.Has("share")
            ? course with { Symptoms = new SymptomOnset(row.Number("share"), row.Number("median"), row.Number("spread"), row.Number("isolate")) }
            : course;
    }

    private static ImmutableArray<ObservedGap> ObservedGaps(ReferenceRow row) =>
    [
        .. row.Text("gaps").Split('|').Select(pair => pair.Split(':'))
            .Select(pair => new ObservedGap(int.Parse(pair[0], CultureInfo.InvariantCulture), long.Parse(pair[1], CultureInfo.InvariantCulture))),
    ];

    [Fact]
    public void A_perfect_screen_and_short_gaps_find_every_infection_and_one_first_screen_all_of_the_window()
    {
        var perfect = InfectionCourse.Windows(new InfectionWindows(2, 9, 2, 9), 1);
        var result = WorkplaceIncidence.Of(10, 0, [new ObservedGap(3, 1000)], perfect, Plain);
        result.DetectionProbability.Value.Should().BeApproximately(1, 1e-12);
        result.Exposure.Should().BeApproximately(3000, 1e-9, "each person-day at risk gives what is found later");
        result.Incidence.Value.Should().BeApproximately(10 / 3000.0, 1e-15);
        WorkplaceIncidence.Of(1, 1, [], perfect, Plain).Incidence.Value.Should().BeApproximately(1 / 7.0, 1e-14, "one person, one screen: seven days of infections are there to be found");
        WorkplaceIncidence.Of(3, 0, [new ObservedGap(70, 100)], perfect, Plain).DetectionProbability.Value.Should().BeApproximately(0.1, 1e-14);
    }

    [Fact]
    public void The_chance_of_detection_is_that_of_the_closed_form_under_one_gap() =>
        Gen.Select(Gen.Int[1, 30], Gen.Double[0.01, 1], Gen.Double[0, 5], Gen.Double[0.1, 20]).Sample((every, s, from, length) =>
        {
            var windows = new InfectionWindows(from, from + length, 0, 1);
            var result = WorkplaceIncidence.Of(5, 0, [new ObservedGap(every, 30)], InfectionCourse.Windows(windows, s), Plain);
            return Math.Abs(result.DetectionProbability.Value!.Value - ScreeningYield.DetectionProbability(new ScreeningRoutine(every, s), windows)) < 1e-11;
        });

    [Fact]
    public void Twice_the_program_is_twice_the_exposure_and_more_gaps_never_less() =>
        Gen.Select(Courses, Gaps, Gen.Long[1, 400], Gen.Double[0, 0.97]).Sample((course, gaps, people, correlation) =>
        {
            var rules = new ScreeningRules { MissCorrelation = correlation };
            var once = WorkplaceIncidence.Of(3, people, gaps, course, rules);
            var twice = WorkplaceIncidence.Of(3, 2 * people, [.. gaps, .. gaps], course, rules);
            var more = WorkplaceIncidence.Of(3, people, [.. gaps, new ObservedGap(400, 10)], course, rules);
            return Math.Abs(twice.Exposure - (2 * once.Exposure)) <= 1e-9 * twice.Exposure && more.Exposure >= once.Exposure - 1e-9
                && once.Exposure >= once.FirstScreenDays * people * (1 - 1e-12)
                && once.Exposure <= (once.FirstScreenDays * once.Screens * (1 + 1e-12))
                && (once.DetectionProbability.Value is not { } chance || chance is >= 0 and <= 1)
                && (once.Incidence.Value is not { } rate || (once.Incidence.Lower <= rate && rate <= once.Incidence.Upper));
        });

    [Fact]
    public void Repeated_misses_leave_less_to_be_found_and_first_screens_as_they_are() =>
        Gen.Select(Courses, Gaps, Gen.Double[0, 0.9]).Sample((course, gaps, correlation) =>
        {
            var independent = WorkplaceIncidence.Of(3, 10, gaps, course, Plain);
            var repeated = WorkplaceIncidence.Of(3, 10, gaps, course, new ScreeningRules { MissCorrelation = correlation });
            return repeated.Exposure <= independent.Exposure * (1 + 1e-6) && Math.Abs(repeated.FirstScreenDays - independent.FirstScreenDays) <= 1e-5 * (1 + independent.FirstScreenDays);
        });

    [Fact]
    public void Who_goes_on_being_screened_without_follow_up_may_be_found_later_so_that_the_incidence_is_lower()
    {
        var gaps = ImmutableArray.Create(new ObservedGap(3, 500));
        var away = WorkplaceIncidence.Of(20, 50, gaps, Box, Plain, 0.7);
        var back = WorkplaceIncidence.Of(20, 50, gaps, Box, new ScreeningRules { FollowThrough = 0.7 });
        back.Incidence.Value.Should().BeLessThan(away.Incidence.Value!.Value).And.BeGreaterThan(WorkplaceIncidence.Of(20, 50, gaps, Box, Plain).Incidence.Value!.Value);
    }

    [Fact]
    public void No_case_gives_nought_with_an_upper_limit()
    {
        var result = WorkplaceIncidence.Of(0, 20, [new ObservedGap(7, 300)], Box, Plain);
        result.Incidence.Value.Should().Be(0);
        result.Incidence.Lower.Should().Be(0);
        result.Incidence.Upper.Should().BeApproximately(-Math.Log(0.025) / result.Exposure, 1e-12);
    }

    [Fact]
    public void What_cannot_be_known_says_why()
    {
        var gaps = ImmutableArray.Create(new ObservedGap(7, 300));
        WorkplaceIncidence.Of(0, 0, [], Box, Plain).Incidence.Reason.Should().Be(UndefinedReason.NoExposure);
        WorkplaceIncidence.Of(0, 5, [], Box, Plain).DetectionProbability.Reason.Should().Be(UndefinedReason.NoExposure);
        WorkplaceIncidence.Of(0, 5, [new ObservedGap(7, 0)], Box, Plain).Incidence.IsDefined.Should().BeTrue("first screens find who is infected");
        WorkplaceIncidence.Of(2, 5, gaps, InfectionCourse.Windows(new InfectionWindows(2, 9, 2, 9), 0), Plain).Incidence.Reason.Should().Be(UndefinedReason.NeverDetected);
        WorkplaceIncidence.Of(2, 5, gaps, InfectionCourse.Windows(new InfectionWindows(2, 2, 2, 9), 1), Plain).Incidence.Reason.Should().Be(UndefinedReason.NeverDetected);
        WorkplaceIncidence.Of(2, 5, gaps, InfectionCourse.ByDay([]), Plain).Incidence.Reason.Should().Be(UndefinedReason.NeverDetected);
        WorkplaceIncidence.Of(2, 5, gaps, Box, Plain, 0).Incidence.Reason.Should().Be(UndefinedReason.NeverFollowedUp);
        WorkplaceIncidence.Of(2, 5, gaps, Box, Plain with { FollowThrough = 0 }).Incidence.Reason.Should().Be(UndefinedReason.NeverFollowedUp);
        WorkplaceIncidence.Of(2, 5, gaps, InfectionCourse.Windows(new InfectionWindows(2, 9, 2, 9), 1e-300), Plain).Incidence.Reason.Should().Be(UndefinedReason.TooLarge);
        WorkplaceIncidence.FoundPerPersonDay(3, []).Reason.Should().Be(UndefinedReason.NoExposure);
    }

    [Fact]
    public void Huge_counts_and_long_courses_stay_finite()
    {
        var result = WorkplaceIncidence.Of(1_000_000_000_000, long.MaxValue, [new ObservedGap(1, long.MaxValue), new ObservedGap(36_525, long.MaxValue)], Box, Plain);
        result.Incidence.Value.Should().BePositive();
        result.DetectionProbability.Value.Should().BeInRange(0, 1);
        var slow = InfectionCourse.Windows(new InfectionWindows(30.5, 3660, 0, 1), 0.8);
        WorkplaceIncidence.Of(4, 100, [new ObservedGap(365, 1000)], slow, new ScreeningRules { MissCorrelation = 0.5 }).DetectionProbability.Value.Should().BeInRange(0.8, 1);
    }

    [Fact]
    public void Found_per_person_day_never_exceeds_the_incidence_of_a_program_that_went_on()
    {
        var gaps = ImmutableArray.Create(new ObservedGap(4, 900), new ObservedGap(14, 50));
        var found = WorkplaceIncidence.FoundPerPersonDay(12, gaps);
        found.Value.Should().BeApproximately(12 / 4300.0, 1e-15);
        found.Upper.Should().BeApproximately(20.96158567 / 4300, 1e-9, "Garwood's upper limit of 12");
        found.Value.Should().BeLessThan(WorkplaceIncidence.Of(12, 0, gaps, Box, Plain).Incidence.Value!.Value);
    }

    [Fact]
    public void Figures_outside_their_domain_are_refused_by_name()
    {
        var gaps = ImmutableArray.Create(new ObservedGap(7, 300));
        var calls = new (Action Call, string Name)[]
        {
            (() => WorkplaceIncidence.Of(-1, 5, gaps, Box, Plain), "cases"), (() => WorkplaceIncidence.Of(1, -5, gaps, Box, Plain), "people"),
            (() => WorkplaceIncidence.Of(1, 5, gaps, Box, Plain, 1.1), "followThrough"), (() => WorkplaceIncidence.Of(1, 5, gaps, Box, Plain, 1, 1), "confidence"),
            (() => WorkplaceIncidence.Of(1, 5, gaps, Box, Plain with { MissCorrelation = 1 }), "MissCorrelation"), (() => WorkplaceIncidence.FoundPerPersonDay(-1, gaps), "cases"),
        };
        foreach (var (call, name) in calls) call.Should().Throw<ArgumentOutOfRangeException>().WithParameterName(name);
        ((Action)(() => WorkplaceIncidence.Of(1, 5, default, Box, Plain))).Should().Throw<ArgumentNullException>();
    }
}
