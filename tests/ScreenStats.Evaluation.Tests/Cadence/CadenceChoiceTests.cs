using ScreenStats.Counting.Programs.Cadence;
using ScreenStats.Evaluation.Cadence.Rows;

namespace ScreenStats.Evaluation.Tests.Cadence;

public class CadenceChoiceTests
{
    [Fact]
    public void Steps_add_up_and_are_marginal_not_average()
    {
        var findings = CadenceSketch.Program().Cadence(CadenceSketch.Exact);
        var steps = findings.Steps.Where(step => step.Leads).ToList();
        steps.Select(step => step.From).Should().Equal("none", "monthly", "fortnightly", "weekly", "twice-weekly", "every-second-day");
        steps.Sum(step => step.Gain.Estimate!.Value).Should().BeApproximately(findings.Value("daily", CadenceMeasure.InfectiousDaysRemoved), 1e-9);
        steps.Sum(step => step.MoreScreens.Estimate!.Value).Should().BeApproximately(findings.Value("daily", CadenceMeasure.Screens), 1e-9);
        foreach (var step in steps)
        {
            step.PerThousandScreens.Estimate.Should().BeApproximately(1000 * step.Gain.Estimate!.Value / step.MoreScreens.Estimate!.Value, 1e-9);
            step.PerFalseAlarm.Estimate.Should().BeApproximately(step.Gain.Estimate!.Value / step.MoreFalseAlarms.Estimate!.Value, 1e-9);
        }

        // Intervals longer than the window: gain and screens both go with the number of screens (section 4.2), then each screen adds less.
        steps[0].PerThousandScreens.Estimate.Should().BeApproximately(steps[1].PerThousandScreens.Estimate!.Value, 1e-9);
        steps.Skip(1).Select(step => -step.PerThousandScreens.Estimate!.Value).Should().BeInAscendingOrder();
    }

    [Fact]
    public void The_option_chosen_is_the_last_step_that_adds_what_the_program_file_asks_for()
    {
        var tally = CadenceSketch.Program();
        var steps = tally.Cadence(CadenceSketch.Exact).Steps.Where(step => step.Leads).ToList();
        foreach (var worthwhile in new[] { 0, 0.3, 0.8, 1.2, 1.6, 2, 100 })
        {
            var findings = tally.Cadence(CadenceSketch.Exact with { Worthwhile = worthwhile });
            var last = steps.LastOrDefault(step => step.PerThousandScreens.Estimate >= worthwhile)?.To ?? "none";
            findings.Choices.Single(choice => choice.Chosen).Option.Should().Be(last, $"at {worthwhile}");
            findings.Options.Single(option => option.IsChosen).Leads.Should().BeTrue();
            findings.Choices.Sum(choice => choice.ShareOfDraws).Should().BeApproximately(1, 1e-12);
            // Nothing is uncertain, so that every draw agrees.
            findings.Choices.Single(choice => choice.Chosen).ShareOfDraws.Should().BeGreaterThan(0.99);
        }

        tally.Cadence(CadenceSketch.Exact with { Worthwhile = 100 }).Text().Should().Contain("No way of screening pays");
        var without = tally.Cadence(CadenceSketch.Exact);
        without.Choices.Should().BeEmpty();
        without.Text().Should().Contain("no option is chosen");
    }

    [Fact]
    public void Under_uncertainty_the_shares_of_the_draws_add_up_and_the_sentence_tells_the_second()
    {
        var findings = CadenceSketch.Program().Cadence(CadenceSketch.Ranged);
        findings.Choices.Sum(choice => choice.ShareOfDraws).Should().BeApproximately(1, 1e-9);
        findings.Choices.Count(choice => choice.ShareOfDraws > 0).Should().BeGreaterThan(1);
        findings.Text().Should().Contain("of the draws");
    }

    [Fact]
    public void What_matters_is_sorted_by_its_swing_and_told()
    {
        var findings = CadenceSketch.Program().Cadence(CadenceSketch.Ranged);
        findings.Swings.Select(swing => -swing.Swing).Should().BeInAscendingOrder();
        findings.Swings.Select(swing => swing.Assumption).Should().OnlyHaveUniqueItems().And.Contain(["sensitivity", "incidence", "brought-in"]);
        findings.Swings.Should().NotContain(swing => swing.Assumption == "specificity" && swing.OptionAtLower == swing.OptionAtUpper, "false alarms move no infectious day");
        var incidence = findings.Swings.Single(swing => swing.Assumption == "incidence");
        (incidence.AtLower, incidence.AtUpper).Should().Be((0.0003, 0.0008));
        incidence.High.Should().BeGreaterThan(incidence.Low);
        findings.Text().Should().Contain("depend on most");
        CadenceSketch.Program().Cadence(CadenceSketch.Exact).Swings.Should().BeEmpty("nothing is uncertain");
    }

    [Fact]
    public void Every_uncertain_assumption_stands_in_the_table_of_assumptions_with_where_it_comes_from()
    {
        var findings = CadenceSketch.Program().Cadence(CadenceSketch.Ranged);
        foreach (var swing in findings.Swings) findings.Assumption(swing.Assumption).Lower.Should().NotBeNull();
        findings.Assumption("sensitivity").Origin.Should().Be(CadenceOrigin.Stated);
        findings.Assumption("delay").Source.Should().Contain("taken as exact");
        findings.Assumptions.Should().OnlyContain(row => row.Source.Length > 0);
        CadenceSketch.Program().Cadence().Assumptions.Where(row => row.Value is null).Should().HaveCountGreaterThan(2).And.OnlyContain(row => row.Origin == CadenceOrigin.NotKnown && row.ValueUndefined != null);
    }

    [Fact]
    public void A_plan_that_is_not_among_the_options_becomes_one()
    {
        var plan = new CadenceOptionSettings { Name = "Monday and Thursday", Weekdays = [DayOfWeek.Monday, DayOfWeek.Thursday] };
        var findings = CadenceSketch.Program().Cadence(CadenceSketch.Exact with { Planned = plan, Options = CadenceWords.Usual });
        findings.Options.Single(option => option.IsPlanned).Should().Match<CadenceOptionFinding>(option => option.Option == plan.Name && option.EveryDays == 3.5 && option.Weekdays == "Monday, Thursday");
        findings.Options.Where(option => !option.IsAsDone).Select(option => option.ScreensPerDay).Should().BeInAscendingOrder();
        findings.Steps.Where(step => step.Leads).Should().HaveCount(7);
        // Two options with as many screens: the step between them adds none, and has no gain for each.
        findings.Steps.Where(step => step.Leads && step.MoreScreens.Estimate < 1e-9).Should().OnlyContain(step => step.PerThousandScreens.Estimate == null);
    }
}
