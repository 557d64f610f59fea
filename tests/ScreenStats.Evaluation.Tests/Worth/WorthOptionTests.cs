using ScreenStats.Counting.Programs;
using ScreenStats.Counting.Programs.Cadence;
using ScreenStats.Evaluation.Cadence;
using ScreenStats.Evaluation.Cadence.Rows;
using ScreenStats.Evaluation.Tests.Cadence;
using ScreenStats.Evaluation.Worth;
using ScreenStats.Evaluation.Worth.Rows;

namespace ScreenStats.Evaluation.Tests.Worth;

public class WorthOptionTests
{
    [Fact]
    public void Where_the_laboratory_makes_pools_and_none_saves_tests_the_text_says_why()
    {
        var pools = WorthSketch.Exact with { LargestPool = 10 };
        var real = CadenceSketch.Program().Worth(pools, WorthSketch.Cadence with { Specificity = new StatedAccuracy(0.9999, null, null, null, null) });
        real.Options.Should().NotContain(row => row.Confirmation == WorthConfirmation.Pooled);
        real.Figure("real-positives", "weekly")!.Figure.Estimate.Should().BeGreaterThan(0.31);
        real.Text().Should().Contain("The laboratory makes pools, but none of a size that it allows saves confirmatory tests").And.Contain("of the positives are real under \"weekly\"");
        var alarms = CadenceSketch.Program().Worth(pools, WorthSketch.Cadence with { Specificity = new StatedAccuracy(0.9, null, null, null, null) });
        alarms.Options.Should().Contain(row => row.Confirmation == WorthConfirmation.Pooled);
        alarms.Text().Should().NotContain("The laboratory makes pools");
        CadenceSketch.Program().Worth().Text().Should().NotContain("pools");
    }

    private static readonly ProgramSettings Exact = new() { Cadence = WorthSketch.Cadence, Costs = WorthSketch.Exact, Policy = new PolicySettings { IsolationDays = 7 } };
    private static readonly Findings Whole = Evaluator.Evaluate(CadenceSketch.Program(), Exact);
    private static readonly WorthFindings Ranged = CadenceSketch.Program().Worth(WorthSketch.Ranged, WorthSketch.RangedCadence);

    [Theory]
    [InlineData("weekly")]
    [InlineData("twice-weekly")]
    [InlineData("daily")]
    public void Spending_is_what_screens_tests_isolation_and_false_alarms_come_to(string option)
    {
        var (does, row) = (Whole.Cadence, Whole.Worth.Option(option));
        var (screens, found, alarms) = (does.Value(option, CadenceMeasure.Screens), does.Value(option, CadenceMeasure.TruePositives), does.Value(option, CadenceMeasure.FalseAlarms));
        row.Spending.Estimate!.Value.Should().BeApproximately((5 * screens) + (60 * (found + alarms)) + (found * 7 * 200) + (alarms * 1.5 * 250), 1e-6);
        row.Cost.Estimate.Should().Be(row.Spending.Estimate, "neither illness nor an outbreak is priced");
        row.Effect.Estimate.Should().Be(does.Value(option, CadenceMeasure.InfectionsAverted));
        row.NetBenefit.Estimate!.Value.Should().BeApproximately((4000 * row.Effect.Estimate!.Value) - row.Cost.Estimate!.Value, 1e-6);

        var without = Whole.Worth.Option(option, WorthConfirmation.Without);
        without.Spending.Estimate!.Value.Should().BeApproximately((5 * screens) + (found * 7 * 200) + (alarms * 7 * 250), 1e-6, "no test is paid for and each false alarm loses the whole isolation time");
        without.Effect.Estimate.Should().Be(row.Effect.Estimate);
    }

    [Fact]
    public void Isolation_is_charged_as_far_as_screening_adds_to_what_symptoms_bring()
    {
        // Symptoms on day 2, before any screen can be positive: nobody is found earlier than they would have stayed home.
        static CourseSettings With(double onset) => CadenceSketch.Windows with { Symptoms = new SymptomSettings { Share = new StatedRange(0.5), OnsetDays = new StatedRange(onset), Spread = new StatedRange(0), Isolate = new StatedRange(0.8) } };
        Findings Of(CourseSettings course) => Evaluator.Evaluate(CadenceSketch.Program(), Exact with { Cadence = WorthSketch.Cadence with { Course = course } });
        var early = Of(With(2));
        foreach (var option in (string[])["weekly", "twice-weekly", "daily"])
        {
            var does = early.Cadence;
            var (screens, found, alarms) = (does.Value(option, CadenceMeasure.Screens), does.Value(option, CadenceMeasure.TruePositives), does.Value(option, CadenceMeasure.FalseAlarms));
            var infections = found / does.Value(option, CadenceMeasure.Detection);
            var without = infections + does.Value(option, CadenceMeasure.InfectionsAverted);
            // By symptoms 0.4 of the infected stay home, of the others as many are found as where nobody has symptoms.
            var alone = Whole.Cadence.Value(option, CadenceMeasure.Detection);
            var away = 7 * ((infections * (0.4 + (0.6 * alone))) - (without * 0.4));
            does.Value(option, CadenceMeasure.DaysAwayAdded).Should().BeApproximately(away, 1e-6, option);
            away.Should().BeLessThan(7 * found, "infections averted send nobody home with symptoms");
            var spending = (5 * screens) + (60 * (found + alarms)) + (away * 200) + (alarms * 1.5 * 250);
            early.Worth.Option(option).Spending.Estimate!.Value.Should().BeApproximately(spending, 1e-5, option);
        }

        // Symptoms long after the isolation by a screen is over: whoever is found is away twice, so all isolation is added.
        var late = Of(With(30));
        var daily = late.Cadence;
        var all = daily.Value("daily", CadenceMeasure.TruePositives) / daily.Value("daily", CadenceMeasure.Detection);
        daily.Value("daily", CadenceMeasure.DaysAwayAdded).Should().BeApproximately(
            7 * ((all * (0.4 + daily.Value("daily", CadenceMeasure.Detection))) - ((all + daily.Value("daily", CadenceMeasure.InfectionsAverted)) * 0.4)), 1e-6);
        early.Cadence.Undefined("none", CadenceMeasure.DaysAwayAdded).Should().BeNull();
        early.Cadence.Value("none", CadenceMeasure.DaysAwayAdded).Should().BeApproximately(0, 1e-12);
        CadenceSketch.Program().Cadence(WorthSketch.Cadence).Undefined("weekly", CadenceMeasure.DaysAwayAdded).Should().Contain("not stated in the policy");
    }

    [Fact]
    public void A_false_alarm_that_is_never_settled_loses_the_whole_isolation_time()
    {
        // Of 2 confirmed, 3 refuted and 5 unsettled positives half are settled.
        var tally = CadenceSketch.Program(unsettled: 5);
        var findings = Evaluator.Evaluate(tally, Exact);
        var alarms = findings.Cadence.Value("weekly", CadenceMeasure.FalseAlarms);
        var lost = alarms * ((0.5 * 1.5) + (0.5 * 7));
        findings.Cadence.Value("weekly", CadenceMeasure.DaysLost).Should().BeApproximately(lost, 1e-9);
        var does = findings.Cadence;
        findings.Worth.Option("weekly").Spending.Estimate!.Value.Should().BeApproximately(
            (5 * does.Value("weekly", CadenceMeasure.Screens)) + (60 * (does.Value("weekly", CadenceMeasure.TruePositives) + alarms)) + (200 * does.Value("weekly", CadenceMeasure.DaysAwayAdded)) + (250 * lost), 1e-6);
        // People who wait for confirmation do not leave before it, and nothing says how long an isolation is where the policy does not.
        var waits = Evaluator.Evaluate(tally, Exact with { Cadence = WorthSketch.Cadence with { IsolateOn = IsolateOn.Confirmation, ConfirmatoryDelayDays = new StatedRange(2) } });
        waits.Cadence.Value("weekly", CadenceMeasure.DaysLost).Should().BeApproximately(1.5 * waits.Cadence.Value("weekly", CadenceMeasure.FalseAlarms), 1e-9);
        tally.Cadence(WorthSketch.Cadence).Value("weekly", CadenceMeasure.DaysLost).Should().BeApproximately(1.5 * alarms, 1e-9);
        findings.Worth.Costs.Single(row => row.Item == "unsettled-positives").Should().Match<WorthCostItem>(row => row.Units.Estimate == 5 * 7 && row.UnitCost.Estimate == 250 && row.Cost.Estimate == 5 * 7 * 250 && !row.IsPart);
        findings.Worth.Figure("days-lost", "counted")!.Figure.Estimate.Should().Be(3 * 1.5);
        findings.Worth.Text().Should().MatchRegex("4.5[0-9]* working days were lost to refuted positives and 35 days to positives never settled, real ones among them\\.");
        Whole.Worth.Costs.Should().NotContain(row => row.Item == "unsettled-positives");
        waits.Worth.Costs.Should().NotContain(row => row.Item == "unsettled-positives");
    }

    [Fact]
    public void No_screening_stands_among_the_options_though_the_program_file_leaves_it_out()
    {
        var left = CadenceSketch.Program().Worth(WorthSketch.Ranged, WorthSketch.RangedCadence with { Options = [.. WorthSketch.RangedCadence.Options.Where(option => option.Name != "none")] });
        left.Options.Should().Equal(Ranged.Options);
        left.Acceptability.Should().Equal(Ranged.Acceptability);
        left.Information.Should().Equal(Ranged.Information);
        left.Swings.Should().Equal(Ranged.Swings);
        left.Ladder.Should().Equal(Ranged.Ladder);
        left.Figures.Should().Equal(Ranged.Figures);
        var one = CadenceSketch.Program().Worth(WorthSketch.Ranged, WorthSketch.RangedCadence with { Options = [WorthSketch.RangedCadence.Planned!] });
        one.Choices().Select(option => option.Key).Should().Equal("none|not-needed", "weekly|confirmed", "weekly|without");
        one.Choices().Where(option => !option.IsNone).Sum(option => option.BestShare)!.Value.Should().BeApproximately(one.PaysShare!.Value, 0.02, "the best is either some way of screening, or none where it does not pay");
        one.Information.Should().Contain(row => row.Parameter == "everything" && row.Value > 0);
        CadenceSketch.Program().Worth(new Counting.Programs.Costs.CostSettings(), new CadenceSettings { Options = [WorthSketch.RangedCadence.Planned!] }).Option("none", WorthConfirmation.NotNeeded).Effect.EstimateUndefined.Should().Be("the course of an infection is not stated");
    }

    [Fact]
    public void What_was_done_stands_beside_the_options_and_is_none_to_choose()
    {
        // Every five days, as none of the options.
        var findings = Evaluator.Evaluate(CadenceSketch.Program(everyDays: 5), Exact with { Cadence = WorthSketch.RangedCadence, Costs = WorthSketch.Ranged });
        var (worth, name) = (findings.Worth, CadenceOptionFinding.AsDone);
        var done = worth.AsDone!;
        worth.Options[^1].Should().BeSameAs(done);
        worth.Options.Count(option => option.IsAsDone).Should().Be(1);
        done.Effect.Estimate.Should().Be(findings.Cadence.Value(name, CadenceMeasure.InfectionsAverted));
        var spent = worth.Figure("cost-per-infection-averted", "modelled")!.Figure.Estimate!.Value;
        (done.Spending.Estimate!.Value / done.Effect.Estimate!.Value).Should().BeApproximately(spent, 1e-9 * spent);
        (done.NetBenefit.Estimate!.Value + done.Cost.Estimate!.Value).Should().BeApproximately(worth.Value!.Value * done.Effect.Estimate.Value, 1e-6);
        done.MeanNetBenefit.Should().NotBeNull();
        (done.IsBest, done.IsJudged, done.IsNone).Should().Be((false, false, false));
        // More often than weekly and less often than twice a week it costs and averts more than the one and less than the other; nothing is said of which to choose.
        done.Effect.Estimate.Value.Should().BeInRange(worth.Option("weekly").Effect.Estimate!.Value, worth.Option("twice-weekly").Effect.Estimate!.Value);
        done.Standing.Should().BeOneOf(WorthStanding.NoOption, WorthStanding.ExtendedlyDominated);
        (done.BestShare, done.BestShareUndefined).Should().Be((null, "it is what was done, and no option to choose"));
        worth.Acceptability.Should().NotContain(row => row.Option == done.Key);
        worth.Choices().Sum(option => option.BestShare!.Value).Should().BeApproximately(1, 1e-9);
        worth.AsDoneTurn!.Should().Match<WorthTurn>(turn => turn.Figure == "weekly-incidence" && turn.Key == "weekly-incidence|(as done)|confirmed");
        CadenceSketch.Program(screens: 1).Worth(WorthSketch.Ranged, WorthSketch.RangedCadence).AsDone.Should().BeNull("nobody was tested twice");
    }

    [Fact]
    public void What_was_done_moves_no_option_on_or_off_the_frontier()
    {
        // As often as the options are not: between none and daily it lies on their frontier.
        var cadence = WorthSketch.Cadence with { Options = [.. WorthSketch.Cadence.Options.Where(option => option.Name is "none" or "daily")], Planned = null };
        var findings = CadenceSketch.Program().Worth(cadence: cadence);
        findings.AsDone!.Standing.Should().Be(WorthStanding.NoOption);
        findings.AsDone.DominatedBy.Should().BeEmpty();
        findings.AsDone.IncrementalRatio.EstimateUndefined.Should().Be("it is what was done, and no option to choose");
        findings.Option("daily").Standing.Should().Be(WorthStanding.OnFrontier);
        findings.Option("daily").IncrementalRatio.Estimate!.Value.Should().BeApproximately(findings.Option("daily").Cost.Estimate!.Value / findings.Option("daily").Effect.Estimate!.Value, 1e-6, "its step is from no screening");
        // Dear for what it averts it is dominated like any other.
        var seldom = CadenceSketch.Program(everyDays: 1).Worth(cadence: WorthSketch.Cadence with { Options = [.. WorthSketch.Cadence.Options.Where(option => option.Name != "daily")] });
        seldom.AsDone!.Standing.Should().NotBe(WorthStanding.OnFrontier);
    }

    [Fact]
    public void No_screening_costs_and_gains_nothing()
    {
        foreach (var findings in new[] { Whole.Worth, Ranged })
        {
            var none = findings.Option("none", WorthConfirmation.NotNeeded);
            (none.Cost.Estimate, none.Effect.Estimate, none.NetBenefit.Estimate).Should().Be((0, 0, 0));
            none.IsNone.Should().BeTrue();
        }
    }

    [Fact]
    public void With_nothing_uncertain_every_draw_is_the_deterministic_sum()
    {
        // To the last digit, whether the course is by windows, of which draws take a quicker quadrature, or by day.
        foreach (var row in Whole.Worth.Options)
        {
            foreach (var figure in new[] { row.Spending, row.Cost, row.Effect, row.NetBenefit }) (figure.Lower, figure.Upper).Should().Be((figure.Estimate, figure.Estimate), row.Key);
            row.MeanNetBenefit.Should().Be(row.NetBenefit.Estimate, row.Key);
            row.BestShare.Should().Be(row.IsAsDone ? null : row.IsBest ? 1 : 0);
        }

        var byDay = CadenceSketch.Program().Worth(cadence: WorthSketch.Cadence with { Course = new CourseSettings { Kind = CourseKind.ByDay, Days = [new(1, 0, 0), new(3, 0.6, 1), new(8, 0.7, 1), new(12, 0, 0)] } });
        foreach (var row in byDay.Options) (row.NetBenefit.Lower, row.NetBenefit.Upper, row.MeanNetBenefit).Should().Be((row.NetBenefit.Estimate, row.NetBenefit.Estimate, row.NetBenefit.Estimate), row.Key);
        Whole.Worth.PaysShare.Should().Be(Whole.Worth.Judged!.NetBenefit.Estimate > 0 ? 1 : 0);
        Whole.Worth.Information.Should().OnlyContain(row => row.Value == 0);
        Whole.Worth.Swings.Should().BeEmpty();
    }

    [Fact]
    public void An_option_is_dominated_exactly_where_a_search_finds_one_that_is_no_dearer_and_does_no_less()
    {
        foreach (var findings in new[] { Whole.Worth, Ranged })
        {
            foreach (var own in findings.Choices())
            {
                var dominated = findings.Choices().Any(other => other.Cost.Estimate <= own.Cost.Estimate && other.Effect.Estimate >= own.Effect.Estimate
                    && (other.Cost.Estimate < own.Cost.Estimate || other.Effect.Estimate > own.Effect.Estimate));
                (own.Standing == WorthStanding.Dominated).Should().Be(dominated, own.Key);
                (own.DominatedBy.Length > 0).Should().Be(own.Standing != WorthStanding.OnFrontier, own.Key);
            }

            // Whatever an effect is worth, the best is on the frontier.
            for (var value = 0.0; value <= 20_000; value += 500)
                findings.Choices().MaxBy(option => (value * option.Effect.Estimate) - option.Cost.Estimate)!.Standing.Should().Be(WorthStanding.OnFrontier);
        }
    }

    [Fact]
    public void Ratios_rise_along_the_frontier_and_the_best_option_is_the_last_below_the_value()
    {
        var frontier = Ranged.Options.Where(option => option.Standing == WorthStanding.OnFrontier).OrderBy(option => option.Cost.Estimate).ToList();
        var ratios = frontier.Skip(1).Select(option => option.IncrementalRatio.Estimate!.Value).ToList();
        ratios.Should().BeInAscendingOrder();
        for (var index = 1; index < frontier.Count; index++)
        {
            ratios[index - 1].Should().BeApproximately(
                (frontier[index].Cost.Estimate!.Value - frontier[index - 1].Cost.Estimate!.Value) / (frontier[index].Effect.Estimate!.Value - frontier[index - 1].Effect.Estimate!.Value), 1e-6 * ratios[index - 1]);
        }

        frontier[ratios.Count(ratio => ratio <= Ranged.Value)].IsBest.Should().BeTrue();
        Ranged.Options.Count(option => option.IsBest).Should().Be(1);
    }

    [Fact]
    public void Illness_and_outbreaks_saved_come_off_the_cost()
    {
        var tally = CadenceSketch.Program();
        var settings = new ProgramSettings
        {
            Policy = Exact.Policy,
            Costs = WorthSketch.Exact with { Illness = new StatedRange(1000), Outbreak = new StatedRange(9000) },
            Cadence = WorthSketch.Cadence with { Course = CadenceSketch.Windows with { Symptoms = new SymptomSettings { Share = new StatedRange(0.4), OnsetDays = new StatedRange(4), Spread = new StatedRange(0.3) } }, Dispersion = new StatedRange(0.4) },
        };
        var findings = Evaluator.Evaluate(tally, settings);
        var row = findings.Worth.Option("weekly");
        var saved = (findings.Cadence.Value("weekly", CadenceMeasure.InfectionsAverted) * 0.4 * 1000) + (findings.Cadence.Value("weekly", CadenceMeasure.OutbreaksAvoided) * 9000);
        saved.Should().BeGreaterThan(0);
        row.Cost.Estimate!.Value.Should().BeApproximately(row.Spending.Estimate!.Value - saved, 1e-6);
        findings.Worth.Missing.Should().NotContain(text => text.Contains("not counted now"));
        tally.Worth().Missing.Should().Contain(text => text.StartsWith("costs.illness")).And.Contain(text => text.StartsWith("costs.outbreak"));
    }

    [Fact]
    public void Pools_are_options_where_they_are_allowed_and_few_positives_are_real()
    {
        var rare = WorthSketch.Cadence with { Specificity = new StatedAccuracy(0.99, null, null, null, null) };
        var tally = CadenceSketch.Program();
        tally.Worth(cadence: rare).Options.Should().NotContain(option => option.Confirmation == WorthConfirmation.Pooled, "the laboratory allows none");
        var settings = new ProgramSettings { Cadence = rare, Costs = WorthSketch.Exact with { LargestPool = 8 }, Policy = Exact.Policy };
        var findings = Evaluator.Evaluate(tally, settings);
        var (found, alarms) = (findings.Cadence.Value("daily", CadenceMeasure.TruePositives), findings.Cadence.Value("daily", CadenceMeasure.FalseAlarms));
        var share = found / (found + alarms);
        // Dorfman: tests for each specimen, for every size that is allowed.
        var least = Enumerable.Range(2, 7).Min(size => (1.0 / size) + 1 - Math.Pow(1 - share, size));
        var (pooled, single) = (findings.Worth.Option("daily", WorthConfirmation.Pooled), findings.Worth.Option("daily"));
        (single.Cost.Estimate - pooled.Cost.Estimate)!.Value.Should().BeApproximately(60 * (found + alarms) * (1 - least), 1e-6);
        single.Standing.Should().Be(WorthStanding.Dominated);
        // Where most positives are real no pool saves a test.
        var real = rare with { Specificity = new StatedAccuracy(0.99999, null, null, null, null) };
        tally.Worth(WorthSketch.Exact with { LargestPool = 8 }, real).Options.Should().NotContain(option => option.Confirmation == WorthConfirmation.Pooled);
    }

    [Fact]
    public void Nothing_within_a_year_is_discounted_and_later_years_are()
    {
        var tally = CadenceSketch.Program();
        var rate = WorthSketch.Exact with { DiscountRate = 0.1 };
        tally.Worth(rate).Option("weekly").Cost.Estimate.Should().Be(Whole.Worth.Option("weekly").Cost.Estimate);
        var years = WorthSketch.Cadence with { Days = 730 };
        var (plain, discounted) = (tally.Worth(cadence: years).Option("weekly"), tally.Worth(rate, years).Option("weekly"));
        var left = (1 + (1 / 1.1)) / 2;
        discounted.Cost.Estimate!.Value.Should().BeApproximately(left * plain.Cost.Estimate!.Value, 1e-6 * plain.Cost.Estimate!.Value);
        discounted.Effect.Estimate!.Value.Should().BeApproximately(left * plain.Effect.Estimate!.Value, 1e-9 * plain.Effect.Estimate!.Value);
        tally.Worth(rate, years).Text().Should().Contain("discounted at 10.0 % a year");
        Whole.Worth.Text().Should().Contain("Nothing is discounted");
    }

    [Fact]
    public void The_effect_is_infectious_days_where_spread_is_not_stated_or_only_they_have_a_value()
    {
        var tally = CadenceSketch.Program();
        var bounds = tally.Worth(cadence: WorthSketch.Cadence with { BroughtIn = null });
        (bounds.Effect, bounds.Value).Should().Be((WorthEffect.InfectiousDaysRemoved, 600));
        bounds.Missing.Should().Contain(text => text.Contains("broughtIn"));
        var valued = tally.Worth(WorthSketch.Exact with { InfectionAverted = null });
        (valued.Effect, valued.Value).Should().Be((WorthEffect.InfectiousDaysRemoved, 600));
        (Whole.Worth.Effect, Whole.Worth.Value).Should().Be((WorthEffect.InfectionsAverted, 4000));
    }

    [Fact]
    public void Where_people_wait_for_confirmation_they_leave_on_the_screen_without_it()
    {
        // How infection passes on is stated, so that it does not follow from what was done.
        var known = WorthSketch.Cadence with { Reproduction = new StatedRange(0.8) };
        var waits = known with { IsolateOn = IsolateOn.Confirmation, ConfirmatoryDelayDays = new StatedRange(2) };
        foreach (var course in new[] { known.Course, new CourseSettings { Kind = CourseKind.ByDay, Days = [new(1, 0, 0), new(3, 0.6, 1), new(8, 0.7, 1), new(12, 0, 0)] } })
        {
            var (screen, confirmed) = (CadenceSketch.Program().Worth(cadence: known with { Course = course }), CadenceSketch.Program().Worth(cadence: waits with { Course = course }));
            foreach (var option in (string[])["weekly", "twice-weekly", "daily"])
            {
                var (waiting, without) = (confirmed.Option(option), confirmed.Option(option, WorthConfirmation.Without));
                without.Effect.Estimate.Should().BeGreaterThan(waiting.Effect.Estimate!.Value, "nobody waits two days");
                var leaves = screen.Option(option, WorthConfirmation.Without);
                (without.Effect.Estimate, without.Spending.Estimate).Should().Be((leaves.Effect.Estimate, leaves.Spending.Estimate), option);
            }
        }

        // Both differ, and the sentence says both.
        CadenceSketch.Program().Worth(cadence: waits).Text().Should().Contain("with people who wait for the confirmatory test costs").And.Contain("without the test they leave on the screen").And.NotContain("pays for itself");
        CadenceSketch.Program().Worth(cadence: known).Text().Should().NotContain("who wait");
        var cadence = CadenceSketch.Program().Cadence(waits);
        cadence.Outcomes.Select(outcome => outcome.Key).Should().OnlyHaveUniqueItems("how often knows one of each");
        // Not stated, a refuted positive keeps nobody away who waits for it.
        var free = Evaluator.Evaluate(CadenceSketch.Program(), Exact with { Cadence = waits with { FalseAlarmDays = null } });
        free.Cadence.Value("weekly", CadenceMeasure.DaysLost).Should().Be(0);
        free.Worth.Option("weekly").Spending.Estimate.Should().NotBeNull();
    }
}
