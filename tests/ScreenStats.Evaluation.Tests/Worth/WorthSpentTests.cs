using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Programs;
using ScreenStats.Counting.Programs.Cadence;
using ScreenStats.Counting.Programs.Costs;
using ScreenStats.Evaluation.Cadence.Rows;
using ScreenStats.Evaluation.Tests.Cadence;
using ScreenStats.Evaluation.Worth;
using ScreenStats.Evaluation.Worth.Rows;

namespace ScreenStats.Evaluation.Tests.Worth;

public class WorthSpentTests
{
    // 40 people, 14 screens each, two confirmed and three refuted positives.
    private static readonly Tally Program = WithSpecimens(CadenceSketch.Program());

    private static Tally WithSpecimens(Tally tally) => Tally.FromCells(tally.Cells with
    {
        Specimens =
        [
            new SpecimenCell(SpecimenReason.FollowUp, 1, 0, 0, 0, 2), new SpecimenCell(SpecimenReason.FollowUp, 0, 1, 1, 0, 3), new SpecimenCell(SpecimenReason.Audit, 0, 1, 0, 0, 10),
            new SpecimenCell(SpecimenReason.Other, 1, 0, 0, 0, 4),
        ],
    });

    private static WorthCostItem Item(WorthFindings findings, string item) => findings.Costs.Single(row => row.Item == item);

    [Fact]
    public void The_total_is_price_times_number_of_every_item()
    {
        var findings = Program.Worth();
        Item(findings, "screens").Cost.Estimate.Should().Be(560 * 5);
        Item(findings, "confirmatory-tests").Units.Estimate.Should().Be(2 + 3, "one follows each of the settled positives");
        Item(findings, "further-tests").Units.Estimate.Should().Be(3, "some had two, and specimens of other reasons are not the screen's");
        Item(findings, "audit-tests").Units.Estimate.Should().Be(10);
        Item(findings, "isolation").Units.Estimate.Should().Be(2 * 7);
        Item(findings, "false-alarms").Units.Estimate.Should().Be(3 * 1.5);
        var total = (560 * 5) + (18 * 60) + (14 * 200) + (4.5 * 250);
        findings.Figure("total-cost")!.Figure.Estimate.Should().Be(total);
        findings.Figure("cost-per-screen")!.Figure.Estimate!.Value.Should().BeApproximately(total / 560.0, 1e-9);
        findings.Figure("cost-per-case")!.Figure.Estimate!.Value.Should().BeApproximately(total / 2.0, 1e-9);
        findings.Figure("screens-per-case")!.Figure.Estimate.Should().Be(280);
        findings.Figure("days-lost", "counted")!.Figure.Estimate.Should().Be(4.5);
    }

    [Fact]
    public void The_cost_of_a_case_has_limits_of_prices_of_counts_and_of_both()
    {
        var findings = Program.Worth(WorthSketch.Ranged);
        var rows = findings.Figures.Where(row => row.Measure == "cost-per-case").ToDictionary(row => row.LimitsOf, row => row.Figure);
        rows.Keys.Should().Equal("prices-and-counts", "prices", "counts");
        findings.Figure("cost-per-case")!.LimitsOf.Should().Be("prices-and-counts", "the widest leads");
        var (total, runs, isolation) = (findings.Figure("total-cost")!.Figure, findings.Figure("screens-per-case")!.Figure, Item(findings, "isolation").Cost);
        rows.Values.Should().OnlyContain(row => row.Estimate == total.Estimate / 2);
        rows["prices"].Lower.Should().Be(total.Lower / 2);
        rows["prices"].Upper.Should().Be(total.Upper / 2);
        // With as many screens for a case as its upper limit, all is shared out among fewer cases but the isolation of each.
        rows["counts"].Upper!.Value.Should().BeApproximately(((total.Estimate!.Value - isolation.Estimate!.Value) / 560 * runs.Upper!.Value) + (7 * 200), 1e-9);
        rows["counts"].Lower!.Value.Should().BeApproximately(((total.Estimate!.Value - isolation.Estimate!.Value) / 560 * runs.Lower!.Value) + (7 * 200), 1e-9);
        // Both, as independent: on the log scale the squares add.
        double Away(double? limit) => Math.Log(limit!.Value / rows["prices"].Estimate!.Value);
        Away(rows["prices-and-counts"].Upper).Should().BeApproximately(double.Hypot(Away(rows["prices"].Upper), Away(rows["counts"].Upper)), 1e-12);
        Away(rows["prices-and-counts"].Lower).Should().BeApproximately(-double.Hypot(Away(rows["prices"].Lower), Away(rows["counts"].Lower)), 1e-12);
        rows["prices-and-counts"].Lower!.Value.Should().BeLessThan(Math.Min(rows["prices"].Lower!.Value, rows["counts"].Lower!.Value));
        rows["prices-and-counts"].Upper!.Value.Should().BeGreaterThan(Math.Max(rows["prices"].Upper!.Value, rows["counts"].Upper!.Value));
        findings.Figures.Select(row => row.Key).Should().OnlyHaveUniqueItems();
        findings.Figures.Should().OnlyContain(row => (row.LimitsOf.Length == 0) == (row.Figure.Lower == null && row.Figure.Upper == null));

        CadenceSketch.Program(confirmed: 0).Worth().Figures.Where(row => row.Measure == "cost-per-case").Should().ContainSingle("there is no case").Which.Figure.Estimate.Should().BeNull();
        CadenceSketch.Program(confirmed: 0, refuted: 0, confirmatory: false).Worth().Figures.Where(row => row.Measure == "cost-per-case").Should().ContainSingle().Which.Figure.EstimateUndefined.Should().Be("there is no confirmatory export");
    }

    [Fact]
    public void What_is_modelled_is_not_said_as_if_it_were_the_counted_total()
    {
        var text = Program.Worth().Text();
        text.Should().NotContain("That is").And.Contain("Modelled without audits of negatives, it spends").And.Contain("the two are not to be added");
        text.Should().Contain("Modelled as it was done, screening keeps").And.Contain("counted over the time of the data, 4.50 working days were lost to refuted positives");
        CadenceSketch.Program().Worth().Text().Should().Contain("Modelled, it spends");
        var faulty = CadenceSketch.Program(refuted: 12, faultyLot: "L-X").Worth(cadence: WorthSketch.RangedCadence with { Specificity = null }).Text();
        faulty.Should().Contain("Modelled without the false alarms of flagged lots, it spends");
    }

    [Fact]
    public void Real_positives_stand_beside_the_share_below_which_most_are_false()
    {
        var findings = CadenceSketch.Program().Worth();
        findings.Figure("real-positives", "counted")!.Should().Match<WorthFigure>(row => row.Unit == "share" && row.Figure.Estimate == 0.4 && row.Figure.Lower < 0.4 && row.Figure.Upper > 0.4 && row.LimitsOf == "counts");
        findings.Figure("real-positives", "counted-without-flagged-lots").Should().BeNull();
        findings.Text().Should().Contain("Of the positives that were followed up 40.0 % were real (95 % interval");
        var faulty = CadenceSketch.Program(refuted: 12, faultyLot: "L-X").Worth();
        faulty.Figure("real-positives", "counted")!.Figure.Estimate!.Value.Should().BeApproximately(2 / 14.0, 1e-12);
        faulty.Figure("real-positives", "counted-without-flagged-lots")!.Figure.Estimate.Should().Be(1);
        faulty.Text().Should().Contain("and of those of lots that are not flagged 100 %");
        CadenceSketch.Program(confirmed: 0, refuted: 0, unsettled: 3).Worth().Figure("real-positives", "counted")!.Figure.EstimateUndefined.Should().NotBeNull();
    }

    [Fact]
    public void What_one_more_figure_would_allow_is_listed_once()
    {
        var findings = Program.Worth(new CostSettings());
        findings.Missing.Should().NotBeEmpty();
        foreach (var one in findings.Missing) findings.Text().Should().NotContain(one);
        findings.Text().Should().Contain("what stating one more figure would allow is listed");
        Program.Worth(cadence: new CadenceSettings()).Missing.Should().Contain(text => text.StartsWith("cadence.course"));
    }

    [Fact]
    public void An_outbreak_that_is_priced_is_said_to_be_a_chain_of_five()
    {
        Program.Worth(WorthSketch.Ranged, WorthSketch.RangedCadence).Text().Should().Contain("An outbreak is a chain of five or more infections from one brought in");
        Program.Worth().Text().Should().NotContain("outbreak is a chain");
        Program.Worth().Missing.Should().Contain(text => text.StartsWith("costs.outbreak") && text.Contains("five or more"));
    }

    [Fact]
    public void Why_an_option_that_is_not_planned_is_judged_is_said()
    {
        Program.Worth().Text().Should().NotContain("is judged because");
        Program.Worth(cadence: WorthSketch.Cadence with { Planned = null }).Text().Should().Contain("\"weekly\" is judged because it comes nearest to how often people were screened in the data; no plan is stated.");
        var elsewhere = new SitePlanSettings(["North"], WorthSketch.Cadence.Options[^1]);
        Program.Worth(cadence: WorthSketch.Cadence with { Planned = null, PlannedAt = [elsewhere] }).Text().Should().Contain("in the data; the program file plans it at no site.");
    }

    [Fact]
    public void A_screen_in_parts_costs_their_sum_and_the_parts_are_not_added_twice()
    {
        var findings = Program.Worth(WorthSketch.Ranged);
        var screen = 3 + (4 * 30 / 60.0) + 0.5 + 0.1;
        Item(findings, "screens").UnitCost.Estimate!.Value.Should().BeApproximately(screen, 1e-12);
        Item(findings, "screens").UnitCost.Lower!.Value.Should().BeApproximately(2 + (2 * 25 / 60.0) + 0.2 + 0.1, 1e-12);
        findings.Costs.Where(row => row.IsPart).Select(row => row.Item).Should().Equal("kits", "operators", "supervision", "waste");
        findings.Costs.Where(row => row.IsPart).Sum(row => row.Cost.Estimate!.Value).Should().BeApproximately(560 * screen, 1e-9);
        findings.Figure("total-cost")!.Figure.Estimate!.Value.Should().BeApproximately(findings.Costs.Where(row => !row.IsPart).Sum(row => row.Cost.Estimate!.Value), 1e-9);
        var total = findings.Figure("total-cost")!.Figure;
        total.Lower.Should().BeLessThan(total.Estimate!.Value);
        total.Upper.Should().BeGreaterThan(total.Estimate!.Value);
    }

    [Fact]
    public void Modelled_costs_are_of_screening_as_it_was_done()
    {
        var findings = Program.Worth();
        var done = Evaluator.Evaluate(Program, new ProgramSettings { Cadence = WorthSketch.Cadence }).Cadence;
        double Value(CadenceMeasure measure) => done.Value("(as done)", measure);
        var spending = (5 * Value(CadenceMeasure.Screens)) + (60 * (Value(CadenceMeasure.TruePositives) + Value(CadenceMeasure.FalseAlarms))) + (Value(CadenceMeasure.TruePositives) * 7 * 200) + (Value(CadenceMeasure.FalseAlarms) * 1.5 * 250);
        findings.Figure("cost-per-infectious-day")!.Figure.Estimate!.Value.Should().BeApproximately(spending / Value(CadenceMeasure.InfectiousDaysRemoved), 1e-6);
        findings.Figure("cost-per-infection-averted")!.Figure.Estimate!.Value.Should().BeApproximately(spending / Value(CadenceMeasure.InfectionsAverted), 1e-6);
        findings.Figure("days-kept-out-per-day-lost")!.Figure.Estimate!.Value.Should().BeApproximately(Value(CadenceMeasure.InfectiousDaysRemoved) / Value(CadenceMeasure.DaysLost), 1e-9);
    }

    [Fact]
    public void The_marginal_cost_is_that_of_the_step_and_the_average_that_of_all()
    {
        var findings = Program.Worth();
        var (weekly, daily) = (findings.Option("twice-weekly"), findings.Option("daily"));
        findings.Figure("average-cost", "daily")!.Figure.Estimate!.Value.Should().BeApproximately(daily.Spending.Estimate!.Value / daily.Effect.Estimate!.Value, 1e-6);
        findings.Figure("marginal-cost", "daily")!.Figure.Estimate!.Value.Should().BeApproximately(
            (daily.Spending.Estimate!.Value - weekly.Spending.Estimate!.Value) / (daily.Effect.Estimate!.Value - weekly.Effect.Estimate!.Value), 1e-6);
        findings.Figure("marginal-cost", "daily")!.Figure.Estimate.Should().BeGreaterThan(findings.Figure("average-cost", "daily")!.Figure.Estimate!.Value, "the last step buys least");
    }

    [Fact]
    public void Without_any_price_none_is_made_up()
    {
        var findings = Program.Worth(new CostSettings());
        findings.Verdict.Should().Be("Whether screening is worth it cannot be said: the program file states no costs, and none is made up.");
        findings.Costs.Should().OnlyContain(row => row.UnitCost.Estimate == null && row.Cost.Estimate == null && row.Origin == CadenceOrigin.NotKnown);
        findings.Figure("total-cost")!.Figure.Estimate.Should().BeNull();
        findings.Options.Where(row => !row.IsNone).Should().OnlyContain(row => row.Cost.Estimate == null && row.Effect.Estimate != null && row.Standing == WorthStanding.NotKnown);
        findings.Missing.Should().Contain(text => text.StartsWith("costs.screen")).And.Contain(text => text.StartsWith("costs.confirmatoryTest")).And.Contain(text => text.StartsWith("costs.infectionAverted"));
        findings.PaysShare.Should().BeNull();
    }

    [Theory]
    [InlineData("screen", "costs.screen, or its parts")]
    [InlineData("confirmatoryTest", "costs.confirmatoryTest")]
    [InlineData("isolationDay", "costs.isolationDay")]
    [InlineData("workingDay", "costs.workingDay")]
    public void With_one_price_missing_the_rest_is_a_lower_bound_and_the_price_is_asked_for(string missing, string asked)
    {
        var costs = missing switch
        {
            "screen" => WorthSketch.Exact with { Screen = null },
            "confirmatoryTest" => WorthSketch.Exact with { ConfirmatoryTest = null },
            "isolationDay" => WorthSketch.Exact with { IsolationDay = null },
            _ => WorthSketch.Exact with { WorkingDay = null },
        };
        var findings = Program.Worth(costs);
        var total = findings.Figure("total-cost")!.Figure;
        (total.Estimate, total.Upper).Should().Be((null, null));
        total.Lower.Should().BeInRange(1, Program.Worth().Figure("total-cost")!.Figure.Estimate!.Value);
        findings.Option("weekly").Cost.Estimate.Should().BeNull();
        findings.Option("weekly", WorthConfirmation.Without).Cost.Estimate.HasValue.Should().Be(missing == "confirmatoryTest", "without a confirmatory test its price is not needed");
        findings.Missing.Should().Contain(text => text.StartsWith(asked));
        findings.Verdict.Should().StartWith("Whether screening is worth it cannot be said: the ");
        findings.Text().Should().Contain("at least");
    }

    [Fact]
    public void Without_a_value_there_is_a_break_even_and_no_verdict()
    {
        var findings = Program.Worth(WorthSketch.Exact with { InfectionAverted = null, InfectiousDay = null });
        findings.Verdict.Should().Be($"\"weekly\" with confirmatory tests pays for whoever values one infection averted at more than {Evaluation.Model.Rounding.Print(Evaluation.Model.Cell.Number(findings.Turn("value-of-effect")!.BreakEven!.Value), Evaluation.Model.Unit.Ratio)} EUR: what it is worth is not stated, so there is no verdict.");
        findings.Options.Should().OnlyContain(row => row.NetBenefit.Estimate == null && row.BestShare == null && !row.IsBest);
        findings.Options.Count(row => row.Standing == WorthStanding.OnFrontier).Should().BeGreaterThan(1);
        findings.Acceptability.Should().NotBeEmpty("values are looked at all the same");
    }

    [Fact]
    public void Without_isolation_days_what_needs_them_is_not_given()
    {
        var findings = Program.Worth(more: settings => settings with { Policy = new PolicySettings() });
        Item(findings, "isolation").Cost.EstimateUndefined.Should().Contain("not stated in the policy");
        findings.Option("weekly").Cost.EstimateUndefined.Should().Contain("not stated in the policy");
        findings.Missing.Should().Contain(text => text.StartsWith("policy.isolationDays"));
    }
}
