using ScreenStats.Counting.Programs;
using ScreenStats.Counting.Programs.Cadence;
using ScreenStats.Counting.Programs.Costs;
using ScreenStats.Evaluation.Tests.Cadence;
using ScreenStats.Evaluation.Worth;
using ScreenStats.Evaluation.Worth.Rows;

namespace ScreenStats.Evaluation.Tests.Worth;

/// <summary>That one option no longer pays does not mean to stop: which one gains most for how much infection.</summary>
public class WorthLadderTests
{
    private static readonly CadenceSettings Cadence = WorthSketch.Cadence with { Incidence = new StatedRange(0.002), Planned = CadenceWords.Usual.Single(option => option.Name == "twice-weekly") };
    private static readonly CostSettings Costs = WorthSketch.Exact with { InfectionAverted = new StatedRange(12_000), InfectiousDay = new StatedRange(1_500) };
    private static readonly WorthFindings Findings = CadenceSketch.Program().Worth(Costs, Cadence);

    private static WorthFindings At(double weekly, CostSettings? costs = null) => CadenceSketch.Program().Worth(costs ?? Costs, Cadence with { Incidence = new StatedRange(weekly / 7000) });

    private static double Most(WorthFindings findings, string option) =>
        option == "none" ? 0 : findings.Options.Where(row => row.Option == option).Max(row => row.NetBenefit.Estimate!.Value);

    [Fact]
    public void The_rungs_lie_end_to_end_and_one_holds_the_incidence_of_the_verdict()
    {
        Findings.Ladder.Should().HaveCountGreaterThan(2);
        Findings.Ladder[0].Should().Match<WorthRung>(rung => rung.From == 0 && rung.IsNone && rung.Option == "none");
        Findings.Ladder[^1].To.Should().BeNull();
        foreach (var (rung, next) in Findings.Ladder.Zip(Findings.Ladder.Skip(1)))
        {
            rung.To.Should().Be(next.From);
            next.From.Should().BeGreaterThan(rung.From);
        }

        var here = Findings.Ladder.Should().ContainSingle(rung => rung.IsPresent).Subject;
        here.From.Should().BeLessThanOrEqualTo(14);
        Findings.Best!.Option.Should().Be(here.Option);
    }

    [Fact]
    public void At_each_step_of_the_ladder_both_options_gain_the_same_and_none_gains_more()
    {
        foreach (var (rung, next) in Findings.Ladder.Zip(Findings.Ladder.Skip(1)))
        {
            var there = At(next.From);
            Most(there, rung.Option).Should().BeApproximately(Most(there, next.Option), 1e-3);
            there.Choices().Max(option => option.NetBenefit.Estimate!.Value).Should().BeApproximately(Math.Max(0, Most(there, next.Option)), 1e-3);
        }
    }

    [Fact]
    public void Within_a_rung_its_option_gains_most()
    {
        foreach (var rung in Findings.Ladder)
        {
            var inside = At(rung.To is { } to ? (rung.From + to) / 2 : rung.From * 1.5);
            Most(inside, rung.Option).Should().BeGreaterThanOrEqualTo(inside.Choices().Max(option => option.NetBenefit.Estimate!.Value) - 1e-6);
        }
    }

    [Fact]
    public void Pools_are_made_as_large_as_suits_the_incidence_of_the_rung()
    {
        var pooling = Costs with { LargestPool = 10, ConfirmatoryTest = new StatedRange(400) };
        var findings = CadenceSketch.Program().Worth(pooling, Cadence);
        foreach (var (rung, next) in findings.Ladder.Zip(findings.Ladder.Skip(1)))
        {
            var there = At(next.From, pooling);
            Most(there, rung.Option).Should().BeApproximately(Most(there, next.Option), 1e-3);
        }
    }

    [Fact]
    public void A_rung_says_what_follows_a_positive()
    {
        // Whoever waits days for a result passes on much in them: without the test the same way of screening averts more.
        var waits = Cadence with { Reproduction = new StatedRange(0.8), IsolateOn = IsolateOn.Confirmation, ConfirmatoryDelayDays = new StatedRange(3) };
        WorthFindings Waiting(double weekly) => CadenceSketch.Program().Worth(Costs, waits with { Incidence = new StatedRange(weekly / 7000) });
        var findings = CadenceSketch.Program().Worth(Costs, waits);
        findings.Ladder.Select(rung => rung.Key).Should().OnlyHaveUniqueItems();
        findings.Ladder.Should().Contain(rung => rung.Confirmation == WorthConfirmation.Without).And.OnlyContain(rung => rung.IsNone == (rung.Confirmation == WorthConfirmation.NotNeeded));
        foreach (var rung in findings.Ladder)
        {
            var best = Waiting(rung.To is { } to ? (rung.From + to) / 2 : rung.From * 1.2).Best!;
            (rung.Option, rung.Confirmation).Should().Be((best.Option, best.Confirmation), rung.Key);
        }

        Findings.Ladder.Where(rung => !rung.IsNone).Should().Contain(rung => rung.Confirmation == WorthConfirmation.Confirmed);
        string[] Column(string id) => [.. findings.LadderTable.Columns.Select(column => column.Name).Where(name => name == id)];
        Column("confirmation").Should().ContainSingle();
        Column("here").Should().ContainSingle();
        Column("assumed").Should().BeEmpty("it is where the present number of infections lies");
    }

    [Fact]
    public void A_rung_is_of_pools_where_they_save_tests_in_all_of_it()
    {
        // Most positives are false at any number of infections that matters: of these a pool saves tests.
        var pooling = Costs with { LargestPool = 10, ConfirmatoryTest = new StatedRange(400), InfectionAverted = new StatedRange(40_000) };
        var alarms = Cadence with { Specificity = new StatedAccuracy(0.98, null, null, null, null) };
        WorthFindings Pooling(double weekly) => CadenceSketch.Program().Worth(pooling, alarms with { Incidence = new StatedRange(weekly / 7000) });
        var findings = Pooling(14);
        findings.Ladder.Should().Contain(rung => rung.Confirmation == WorthConfirmation.Pooled);
        foreach (var rung in findings.Ladder.Where(rung => rung is { Confirmation: WorthConfirmation.Pooled, To: not null }))
        {
            foreach (var share in (double[])[0.01, 0.5, 0.99])
                Pooling(rung.From + (share * (rung.To!.Value - rung.From))).Best!.Should().Match<WorthOption>(best => best.Option == rung.Option && best.Confirmation == WorthConfirmation.Pooled);
        }
    }

    [Fact]
    public void Each_other_option_has_a_break_even_of_its_own()
    {
        Findings.Turn("weekly-incidence")!.Option.Should().BeEmpty("it is of the option judged");
        Findings.OptionTurns.Select(turn => turn.Option).Should().Equal(Findings.Options.Where(option => !option.IsNone && !option.IsJudged).Select(option => option.Key));
        Findings.OptionTurns.Select(turn => turn.Key).Should().OnlyHaveUniqueItems();
        foreach (var turn in Findings.OptionTurns.Where(turn => turn.BreakEven is not null))
            At(turn.BreakEven!.Value).Options.Single(option => option.Key == turn.Option).NetBenefit.Estimate!.Value.Should().BeApproximately(0, 1e-3, turn.Option);
        Findings.TurnTable.RowCount.Should().Be(Findings.Turns.Length + Findings.OptionTurns.Length);
    }

    [Fact]
    public void A_manager_reads_to_step_down_and_not_to_stop()
    {
        var said = Findings.Sentences[1].Text;
        said.Should().MatchRegex(@"^To pay is not to gain most: all else as assumed, below \S+ in 1,000 people a week no screening, from \S+ ""weekly"", .* gains most, so where one way no longer pays, step down before you stop\.$");
        Findings.Ladder[1].Option.Should().Be("weekly");
        Findings.Turn("weekly-incidence")!.BreakEven.Should().BeGreaterThan(Findings.Ladder[1].From);
    }

    [Fact]
    public void Where_the_option_judged_is_the_last_to_pay_below_it_is_no_screening()
    {
        var weekly = CadenceSketch.Program().Worth(Costs, Cadence with { Planned = CadenceWords.Usual.Single(option => option.Name == "weekly") });
        weekly.Sentences[1].Text.Should().MatchRegex(@"all else as assumed, below \S+ in 1,000 people a week no screening");
    }

    [Fact]
    public void Where_nothing_pays_that_is_said_and_without_a_value_there_is_no_ladder()
    {
        CadenceSketch.Program().Worth(Costs with { Screen = new StatedRange(1e6) }, Cadence).Text().Should().Contain("No way of screening that was looked at gains more than none");
        CadenceSketch.Program().Worth(Costs with { InfectionAverted = null, InfectiousDay = null }, Cadence).Ladder.Should().BeEmpty();
        CadenceSketch.Program().Worth(new CostSettings(), Cadence).Ladder.Should().BeEmpty();
    }

    [Fact]
    public void No_more_infection_is_looked_at_than_leaves_half_of_the_people_to_be_infected()
    {
        var findings = CadenceSketch.Program().Worth(Costs, Cadence with { ImmunityDays = new StatedRange(180) });
        findings.Ladder.Should().OnlyContain(rung => rung.From <= 0.5 / 180 * 7 * 1_000 && (rung.From == 0 || !rung.IsNone));
        findings.Turn("weekly-incidence")!.OtherBreakEven.Should().BeNull();
    }

    [Fact]
    public void What_was_done_has_a_sentence_of_its_own()
    {
        var done = Findings.AsDone!;
        Findings.Text().Should().MatchRegex($"As it was done, site by site, screening (gains|comes to) -?[0-9,.]+ ")
            .And.Contain(ScreenStats.Evaluation.Model.Rounding.Print(ScreenStats.Evaluation.Model.Cell.Number(done.NetBenefit.Estimate!.Value), ScreenStats.Evaluation.Model.Unit.Ratio));
    }
}
