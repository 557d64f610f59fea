using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Programs;
using ScreenStats.Counting.Programs.Cadence;
using ScreenStats.Evaluation.Cadence.Rows;
using ScreenStats.Statistics.Cadence.Courses;
using ScreenStats.Statistics.Cadence.Incidences;
using ScreenStats.Statistics.Cadence.Intervals;

namespace ScreenStats.Evaluation.Tests.Cadence;

public class CadenceOutcomeTests
{
    private static readonly Tally Program = CadenceSketch.Program();

    [Fact]
    public void With_everything_stated_exactly_the_figures_are_those_of_the_closed_forms()
    {
        var findings = Program.Cadence(CadenceSketch.Exact);
        var windows = new InfectionWindows(2, 12, 3, 9);
        // All brought in, and nobody infected twice: 200 people at 0.0005 a day for 91 days.
        var infections = 200 * (1 - Math.Exp(-0.0005 * 91));
        foreach (var (option, days) in new[] { ("monthly", 365.0 / 12), ("fortnightly", 14), ("weekly", 7), ("twice-weekly", 3.5), ("every-second-day", 2), ("daily", 1) })
        {
            var routine = new ScreeningRoutine(days, 0.6);
            var (found, removed) = (ScreeningYield.DetectionProbability(routine, windows), ScreeningYield.InfectiousDaysRemoved(routine, windows, 0.5));
            var screens = 200 * 91 / days;
            findings.Value(option, CadenceMeasure.Detection).Should().BeApproximately(found, 1e-9, option);
            findings.Value(option, CadenceMeasure.InfectiousDaysRemoved).Should().BeApproximately(infections * removed, 1e-8, option);
            findings.Value(option, CadenceMeasure.ShareRemoved).Should().BeApproximately(removed / 6, 1e-9, option);
            findings.Value(option, CadenceMeasure.InfectionsAverted).Should().Be(0, option);
            findings.Value(option, CadenceMeasure.OutbreaksAvoided).Should().Be(0, option);
            findings.Value(option, CadenceMeasure.Screens).Should().BeApproximately(screens, 1e-9, option);
            findings.Value(option, CadenceMeasure.FalseAlarms).Should().BeApproximately(screens * 0.002, 1e-9, option);
            findings.Value(option, CadenceMeasure.DaysLost).Should().BeApproximately(screens * 0.003, 1e-9, option);
            findings.Value(option, CadenceMeasure.AnyFalseAlarm).Should().BeApproximately(1 - Math.Pow(0.998, 91 / days), 1e-12, option);
            findings.Value(option, CadenceMeasure.TruePositives).Should().BeApproximately(infections * found, 1e-8, option);
            findings.Value(option, CadenceMeasure.PredictiveValue).Should().BeApproximately(infections * found / ((infections * found) + (screens * 0.002)), 1e-9, option);
        }

        foreach (var measure in CadenceSketch.Measures.Except([CadenceMeasure.PredictiveValue, CadenceMeasure.DaysAwayAdded])) findings.Value("none", measure).Should().Be(0, measure.ToString());
        findings.Undefined("none", CadenceMeasure.PredictiveValue).Should().Be("nobody is screened");
        findings.Undefined("weekly", CadenceMeasure.DaysAwayAdded).Should().Be("how long a case is kept away is not stated in the policy");
    }

    [Fact]
    public void Taken_as_exact_the_limits_are_the_figure_itself()
    {
        foreach (var outcome in Program.Cadence(CadenceSketch.Exact).Outcomes.Where(outcome => outcome.Figure.Estimate is not null))
            (outcome.Figure.Lower, outcome.Figure.Upper).Should().Be((outcome.Figure.Estimate, outcome.Figure.Estimate), outcome.Key);
    }

    [Fact]
    public void The_incidence_is_the_cases_by_the_exposure_under_the_real_gaps_and_never_the_share_positive()
    {
        var findings = CadenceSketch.Program(confirmed: 4, refuted: 2, unsettled: 2).Cadence(CadenceSketch.Exact with { Incidence = null });
        var course = InfectionCourse.Windows(new InfectionWindows(2, 12, 3, 9), 0.6);
        var expected = WorkplaceIncidence.Of(4, 40, [new ObservedGap(7, 40 * 13)], course, new ScreeningRules(), followThrough: 6.0 / 8);

        findings.Inputs.Incidence.Estimate.Should().BeApproximately(expected.Incidence.Value!.Value, 1e-12);
        findings.Inputs.Incidence.Lower.Should().BeLessThan(expected.Incidence.Value!.Value);
        findings.Inputs.Incidence.Upper.Should().BeGreaterThan(expected.Incidence.Value!.Value);
        findings.Assumption("incidence").Origin.Should().Be(CadenceOrigin.Data);
        findings.Inputs.FoundPerPersonDay.Estimate.Should().BeApproximately(4.0 / (40 * 13 * 7), 1e-12);
        findings.Inputs.Gaps.Should().Equal(new Evaluation.Cadence.Inputs.CadenceGap(7, 520));
    }

    [Fact]
    public void What_the_confirmatory_test_misses_is_added_to_the_incidence()
    {
        var settings = CadenceSketch.Exact with { Incidence = null };
        var plain = Program.Cadence(settings).Inputs.Incidence.Estimate!.Value;
        var with = Program.Cadence(settings, program => program with { ConfirmatoryTest = new ConfirmatoryTestSettings { Sensitivity = new StatedAccuracy(0.8, null, null, null, null) } });
        with.Inputs.Incidence.Estimate.Should().BeApproximately(plain / 0.8, 1e-12);
    }

    [Fact]
    public void Specificity_is_what_was_refuted_without_flagged_lots_and_with_its_part_of_what_was_never_settled()
    {
        var tally = CadenceSketch.Program(people: 100, confirmed: 3, refuted: 12, unsettled: 3);
        var findings = tally.Cadence(CadenceSketch.Exact with { Specificity = null });
        findings.Inputs.Specificity.Estimate.Should().BeApproximately(1 - (12.0 / 1400 * 18 / 15), 1e-12);

        // One lot has all the refuted positives of a program: it is flagged, and its false alarms are not the price of screening.
        var builder = new Sketches.ProgramSketch();
        builder.Runs(Outcome.Negative, 4_000).Runs(Outcome.Positive, 4, FollowUp.Confirmed).Runs(Outcome.Positive, 2, FollowUp.Refuted);
        builder.Runs(Outcome.Negative, 400, lot: "B2").Runs(Outcome.Positive, 40, FollowUp.Refuted, lot: "B2");
        var evaluated = Evaluator.Evaluate(builder.Tally(), new ProgramSettings { Cadence = CadenceSketch.Exact with { Specificity = null } });
        evaluated.Lots.Single(lot => lot.Lot == "B2").Flag.Should().Be(Flag.Refuted);
        evaluated.Cadence.Inputs.Specificity.Estimate.Should().BeApproximately(1 - (2.0 / 4006), 1e-12);
        evaluated.Cadence.Assumption("specificity").Source.Should().Contain("without the flagged lots");
    }

    [Fact]
    public void What_spreads_inside_follows_from_what_was_done_and_from_the_share_brought_in()
    {
        var settings = CadenceSketch.Exact with { BroughtIn = new StatedRange(0.6) };
        var findings = Program.Cadence(settings);
        // As it was done a case causes 0.4 more, so that the infections stay as they are; none of the screens of the data, and more come.
        var done = findings.Value(CadenceOptionFinding.AsDone, CadenceMeasure.InfectionsAverted);
        var all = findings.Value("daily", CadenceMeasure.InfectionsAverted);
        done.Should().BeGreaterThan(0).And.BeLessThan(all);
        findings.Value("weekly", CadenceMeasure.InfectionsAverted).Should().BeApproximately(done, 1e-6, "the data were weekly");
        findings.Value("daily", CadenceMeasure.OutbreaksAvoided).Should().BeGreaterThan(0);
        findings.LeadingBasis.Should().Be(CadenceBasis.AsStated);

        // A reproduction that is stated takes its place: the same one gives the same.
        var removed = findings.Value(CadenceOptionFinding.AsDone, CadenceMeasure.Detection);
        removed.Should().BeGreaterThan(0);
        var perInfection = ScreeningYield.FractionRemoved(new ScreeningRoutine(7, 0.6), new InfectionWindows(2, 12, 3, 9), 0.5).Value!.Value;
        var same = Program.Cadence(settings with { BroughtIn = null, Reproduction = new StatedRange(0.4 / (1 - perInfection)) });
        same.Value("daily", CadenceMeasure.InfectionsAverted).Should().BeApproximately(all, 1e-6);
    }

    [Fact]
    public void Where_nothing_says_how_many_are_brought_in_both_bounds_are_given()
    {
        var findings = Program.Cadence(CadenceSketch.Exact with { BroughtIn = null });
        findings.LeadingBasis.Should().Be(CadenceBasis.AllBroughtIn);
        var (low, high) = (findings.Value("weekly", CadenceMeasure.InfectiousDaysRemoved), findings.Value("weekly", CadenceMeasure.InfectiousDaysRemoved, CadenceBasis.AllInside));
        low.Should().BeApproximately(Program.Cadence(CadenceSketch.Exact).Value("weekly", CadenceMeasure.InfectiousDaysRemoved), 1e-9);
        high.Should().BeGreaterThan(low);
        var stated = Program.Cadence(CadenceSketch.Exact with { BroughtIn = new StatedRange(0.5) }).Value("weekly", CadenceMeasure.InfectiousDaysRemoved);
        stated.Should().BeInRange(low, high);
        findings.Undefined("weekly", CadenceMeasure.OutbreaksAvoided).Should().Contain("brought in");
        findings.Text().Should().Contain("the truth lies between");
    }

    [Fact]
    public void A_course_by_day_that_is_a_box_gives_what_the_windows_give()
    {
        var box = new CourseSettings
        {
            Kind = CourseKind.ByDay,
            Days = [new(2, 0, 0), new(2.0000001, 0.6, 0), new(3, 0.6, 0), new(3.0000001, 0.6, 1), new(9, 0.6, 1), new(9.0000001, 0.6, 0), new(12, 0.6, 0), new(12.0000001, 0, 0)],
        };
        var (windows, byDay) = (Program.Cadence(CadenceSketch.Exact), Program.Cadence(CadenceSketch.Exact with { Course = box, Sensitivity = null }));
        foreach (var option in windows.Options)
        {
            foreach (var measure in new[] { CadenceMeasure.Detection, CadenceMeasure.InfectiousDaysRemoved, CadenceMeasure.ShareRemoved, CadenceMeasure.CaughtBeforeSpread })
                byDay.Value(option.Option, measure).Should().BeApproximately(windows.Value(option.Option, measure), 1e-4, option.Option + measure);
        }
    }

    [Fact]
    public void People_who_are_sent_away_on_confirmation_only_stay_longer_at_work_and_some_for_good()
    {
        var screen = CadenceSketch.Program(unsettled: 5).Cadence(CadenceSketch.Exact);
        var confirmation = CadenceSketch.Program(unsettled: 5).Cadence(CadenceSketch.Exact with { IsolateOn = IsolateOn.Confirmation, ConfirmatoryDelayDays = new StatedRange(2) });
        confirmation.Value("weekly", CadenceMeasure.ShareRemoved).Should().BeLessThan(screen.Value("weekly", CadenceMeasure.ShareRemoved));
        // Half of the positives were never settled, so that what was done removes less than the weekly screening that it was.
        confirmation.Value(CadenceOptionFinding.AsDone, CadenceMeasure.ShareRemoved).Should().BeLessThan(confirmation.Value("weekly", CadenceMeasure.ShareRemoved) - 0.01);

        var unknown = CadenceSketch.Program().Cadence(CadenceSketch.Exact with { IsolateOn = IsolateOn.Confirmation });
        unknown.Undefined("weekly", CadenceMeasure.InfectiousDaysRemoved).Should().Contain("confirmatory result takes");
        unknown.Missing.Should().Contain(text => text.StartsWith("confirmatoryDelayDays"));
    }

    [Fact]
    public void Plan_and_practice_stand_side_by_side()
    {
        var weekly = new CadenceOptionSettings { Name = "weekly", EveryDays = 7 };
        var findings = CadenceSketch.Program(everyDays: 14, screens: 7, unsettled: 5).Cadence(CadenceSketch.Exact with { Participation = null, Planned = weekly });
        CadenceAdherence Row(string measure) => findings.Adherence.Single(row => row.Measure == measure);

        Row("days-between-screens").Planned.Estimate.Should().Be(7);
        Row("days-between-screens").Observed.Estimate.Should().Be(14);
        Row("screens").Share.Estimate.Should().Be(0.5);
        findings.Assumption("participation").Value.Should().Be(0.5);
        Row("followed-up-positives").Share.Estimate.Should().Be(0.5);
        findings.NotFollowedUp.Should().Be(5);
        var windows = new InfectionWindows(2, 12, 3, 9);
        Row("detection").Planned.Estimate.Should().BeApproximately(ScreeningYield.DetectionProbability(new ScreeningRoutine(7, 0.6), windows), 1e-9);
        Row("detection").Observed.Estimate.Should().BeApproximately(ScreeningYield.DetectionProbability(new ScreeningRoutine(14, 0.6), windows), 1e-9);
        findings.Options.Single(option => option.IsPlanned).Option.Should().Be("weekly");
        findings.Text().Should().Contain("14 days passed on average, where 7 were planned");
    }

    [Fact]
    public void A_plan_of_some_sites_holds_there()
    {
        var builder = new Sketches.TallyCellsBuilder();
        for (var screen = 0; screen < 10; screen++)
        {
            for (var person = 0; person < 10; person++) builder.Add($"n{person}", Outcome.Negative, site: "North", day: screen * 7).Add($"s{person}", Outcome.Negative, site: "South", day: screen * 14);
        }

        var weekly = new CadenceOptionSettings { Name = "weekly", EveryDays = 7 };
        var fortnightly = new CadenceOptionSettings { Name = "fortnightly", EveryDays = 14 };
        var findings = builder.Tally().Cadence(CadenceSketch.Exact with { Participation = null, Planned = weekly, PlannedAt = [new SitePlanSettings(["South"], fortnightly)] });
        findings.Assumption("participation").Value.Should().Be(1);
        findings.Adherence.Single(row => row.Measure == "days-between-screens").Planned.Estimate.Should().BeApproximately((630 + 1260) / (90.0 + 90), 1e-12);
    }

    [Fact]
    public void Viral_loads_give_what_their_simulation_gives_and_say_that_their_course_is_a_published_one()
    {
        var loads = new CourseSettings { Kind = CourseKind.ViralLoad, DetectionLimit = new StatedRange(5, 4, 6) };
        var findings = Program.Cadence(CadenceSketch.Exact with
        {
            Course = loads, Sensitivity = null, DelayDays = new StatedRange(0), Options = [.. CadenceWords.Usual[..5], new() { Name = "every-third-day", EveryDays = 3 }, .. CadenceWords.Usual[5..]],
        });

        // Section 1 of the reference values (computed there), the limit 10^5, acted upon at once: every day .975, every third .806, weekly .552; symptoms alone .2335. Of 4,000 people the standard error is below .007.
        double Together(string option) => 1 - ((1 - findings.Value(option, CadenceMeasure.ShareRemoved)) * (1 - 0.2335));
        Together("daily").Should().BeApproximately(0.975, 0.03);
        Together("weekly").Should().BeApproximately(0.552, 0.03);
        Together("every-third-day").Should().BeApproximately(0.806, 0.03);
        findings.Assumption("viral-loads").Source.Should().Contain("from memory");
        findings.Assumption("symptoms").Value.Should().Be(0.35);
        var swing = findings.Swings.Single();
        swing.Assumption.Should().Be("detection-limit");
        swing.Low.Should().BeGreaterThan(swing.High, "a screen that finds less removes less");
        var figure = findings.Outcome("weekly", CadenceMeasure.ShareRemoved)!.Figure;
        (figure.Upper!.Value - figure.Lower!.Value).Should().BeInRange(0.03, 0.4);

        // The incidence from the cases, each person with a detectable time of their own: about cases by people for each day found.
        var fromCases = Program.Cadence(CadenceSketch.Exact with { Course = loads, Sensitivity = null, Incidence = null });
        fromCases.Inputs.Incidence.Estimate.Should().BeInRange(2.0 / (40 * 13 * 7), 8 * 2.0 / (40 * 13 * 7));
        fromCases.Value("weekly", CadenceMeasure.InfectiousDaysRemoved).Should().BeGreaterThan(0);
    }
}
