using ScreenStats.Counting.Programs;
using ScreenStats.Counting.Programs.Cadence;
using ScreenStats.Evaluation.Tests.Cadence;
using ScreenStats.Evaluation.Worth;
using ScreenStats.Evaluation.Worth.Rows;

namespace ScreenStats.Evaluation.Tests.Worth;

/// <summary>Each break-even, stated as the figure in a program file, leaves a net benefit of 0.</summary>
public class WorthTurnTests
{
    private static readonly CadenceSettings Cadence = WorthSketch.Cadence with { Incidence = new StatedRange(0.002) };
    private static readonly Counting.Programs.Costs.CostSettings Costs = WorthSketch.Exact with { InfectionAverted = new StatedRange(20_000), InfectiousDay = new StatedRange(3_000) };
    private static readonly WorthFindings Findings = CadenceSketch.Program().Worth(Costs, Cadence);

    private static double Net(CadenceSettings? cadence = null, Func<Counting.Programs.Costs.CostSettings, Counting.Programs.Costs.CostSettings>? costs = null) =>
        CadenceSketch.Program().Worth(costs is null ? Costs : costs(Costs), cadence ?? Cadence).Judged!.NetBenefit.Estimate!.Value;

    private static double BreakEven(string figure) => Findings.Turn(figure)!.BreakEven!.Value;

    [Fact]
    public void The_program_of_these_tests_pays()
    {
        Findings.Judged!.Key.Should().Be("weekly|confirmed");
        Net().Should().BeGreaterThan(1000);
    }

    [Fact]
    public void Of_the_incidence()
    {
        var turn = Findings.Turn("weekly-incidence")!;
        turn.Pays.Should().Be(WorthPays.Between);
        turn.Present.Should().BeApproximately(0.002 * 7 * 1000, 1e-9);
        Net(Cadence with { Incidence = new StatedRange(BreakEven("weekly-incidence") / 7000) }).Should().BeApproximately(0, 1e-3);
    }

    [Fact]
    public void Of_the_incidence_where_it_comes_from_cases()
    {
        var data = CadenceSketch.Program().Worth(Costs, Cadence with { Incidence = null });
        data.Turn("weekly-incidence")!.BreakEven!.Value.Should().BeApproximately(BreakEven("weekly-incidence"), 1e-6);
    }

    [Fact]
    public void Of_the_specificity()
    {
        Findings.Turn("specificity")!.Pays.Should().Be(WorthPays.Above);
        Net(Cadence with { Specificity = new StatedAccuracy(BreakEven("specificity"), null, null, null, null) }).Should().BeApproximately(0, 1e-3);
    }

    [Fact]
    public void Of_the_cost_of_a_screen()
    {
        Findings.Turn("cost-of-screen")!.Pays.Should().Be(WorthPays.Below);
        Net(costs: costs => costs with { Screen = new StatedRange(BreakEven("cost-of-screen")) }).Should().BeApproximately(0, 1e-3);
    }

    [Fact]
    public void Of_the_cost_of_a_screen_that_is_free_now()
    {
        // What it gains with free screens, shared out over these.
        var free = CadenceSketch.Program().Worth(Costs with { Screen = new StatedRange(0) }, Cadence).Turn("cost-of-screen")!;
        free.BreakEven!.Value.Should().BeApproximately(BreakEven("cost-of-screen"), 1e-9);
        (free.Present, free.Pays).Should().Be((0, WorthPays.Below));
    }

    [Fact]
    public void Of_the_value()
    {
        Findings.Turn("value-of-effect")!.Pays.Should().Be(WorthPays.Above);
        Net(costs: costs => costs with { InfectionAverted = new StatedRange(BreakEven("value-of-effect")) }).Should().BeApproximately(0, 1e-3);
    }

    [Fact]
    public void Of_the_prevalence_by_what_a_true_positive_is_worth()
    {
        // With all infections brought in, all is in proportion to the infections: the break-even prevalence and incidence are the same share of the present ones.
        var inside = Cadence with { BroughtIn = new StatedRange(1) };
        var findings = CadenceSketch.Program().Worth(Costs with { InfectionAverted = null }, inside);
        var (prevalence, incidence) = (findings.Turn("prevalence")!, findings.Turn("weekly-incidence")!);
        // (1 - p) in the number of false alarms, which the other leaves out.
        (prevalence.BreakEven / prevalence.Present)!.Value.Should().BeApproximately((incidence.BreakEven / incidence.Present)!.Value, 0.01);
    }

    [Fact]
    public void Half_of_the_alarms_are_false_where_they_are_as_many_as_the_real_ones()
    {
        var turn = Findings.Turn("half-false-prevalence")!;
        turn.BreakEven!.Value.Should().BeApproximately(0.002 / (0.6 + 0.002), 1e-12);
        CadenceSketch.Program().Worth(new Counting.Programs.Costs.CostSettings(), Cadence).Turn("half-false-prevalence")!.BreakEven.Should().Be(turn.BreakEven, "it needs no price");
    }

    [Fact]
    public void Screening_that_never_pays_or_always_does_says_so()
    {
        var dear = CadenceSketch.Program().Worth(WorthSketch.Exact with { Screen = new StatedRange(1e6) }, Cadence);
        dear.Turn("weekly-incidence")!.Should().Match<WorthTurn>(turn => turn.Pays == WorthPays.Never && turn.BreakEven == null && turn.BreakEvenUndefined != null);
        dear.Verdict.Should().Contain("pays at no number of infections that was looked at");
        var free = CadenceSketch.Program().Worth(WorthSketch.Exact with { Screen = new StatedRange(0), WorkingDay = new StatedRange(0), ConfirmatoryTest = new StatedRange(0), IsolationDay = new StatedRange(0) }, Cadence);
        free.Turn("weekly-incidence")!.Pays.Should().Be(WorthPays.Always);
        free.Turn("value-of-effect")!.Pays.Should().Be(WorthPays.Always);
        free.Verdict.Should().Contain("pays at every number of infections that was looked at");
    }

    [Fact]
    public void The_verdict_names_the_option_the_value_and_the_condition()
    {
        Findings.Verdict.Should().MatchRegex("^At these costs, over 91 days, and with one infection averted worth 20,000 EUR, \"weekly\" with confirmatory tests pays while between [0-9.]+ and [0-9.]+ in 1,000 people are infected each week, with the rest as assumed; the program file states 14\\.0\\.$");
    }

    // Where nearly everybody is infected whatever is done screening averts little: with much infection it ceases to pay.
    private static WorthFindings TwoPlaces(double incidence) => CadenceSketch.Program().Worth(Costs, Cadence with { Incidence = new StatedRange(incidence) });

    [Fact]
    public void Where_it_turns_twice_the_place_nearest_to_the_incidence_as_it_is_counts_and_both_are_told()
    {
        var low = TwoPlaces(0.002).Turn("weekly-incidence")!;
        low.Should().Match<WorthTurn>(turn => turn.Pays == WorthPays.Between && turn.OtherBreakEven > turn.BreakEven);
        var high = TwoPlaces(low.OtherBreakEven!.Value / 7000 * 1.1);
        high.Turn("weekly-incidence")!.Should().Match<WorthTurn>(turn => turn.Pays == WorthPays.Between && turn.OtherBreakEven < turn.BreakEven);
        high.Turn("weekly-incidence")!.BreakEven!.Value.Should().BeApproximately(low.OtherBreakEven.Value, 1e-6 * low.OtherBreakEven.Value);
        high.Judged!.NetBenefit.Estimate.Should().BeNegative("it lies above both");
        high.Verdict.Should().MatchRegex("pays while between [0-9.]+ and [0-9]+ in 1,000 people are infected each week");
        foreach (var place in new[] { low.BreakEven!.Value, low.OtherBreakEven.Value }) TwoPlaces(place / 7000).Judged!.NetBenefit.Estimate!.Value.Should().BeApproximately(0, 1e-2);
    }

    [Fact]
    public void It_is_looked_for_up_to_ten_times_the_upper_limit_of_the_incidence()
    {
        var other = TwoPlaces(0.002).Turn("weekly-incidence")!.OtherBreakEven!.Value;
        other.Should().BeInRange(15 * 7, 20 * 7, "the usual search ends before it, ten times the incidence after it");
        TwoPlaces(0.0005).Turn("weekly-incidence")!.Should().Match<WorthTurn>(turn => turn.Pays == WorthPays.Above && turn.OtherBreakEven == null);
        CadenceSketch.Program().Worth(Costs, Cadence with { Incidence = new StatedRange(0.0005, 0.0002, 0.002) }).Turn("weekly-incidence")!.OtherBreakEven!.Value.Should().BeApproximately(other, 1e-6);
    }

    [Fact]
    public void One_person_is_a_person_and_limits_that_read_the_same_are_no_interval()
    {
        var range = Cadence with { People = 1, Incidence = new StatedRange(0.002, 0.0019999, 0.0020001) };
        var text = CadenceSketch.Program().Worth(Costs, range).Text();
        text.Should().Contain("days for 1 person").And.NotContain("1 people");
        foreach (var words in new[] { text, CadenceSketch.Program().Worth(Costs, range with { People = 200 }).Text() }) words.Should().NotMatchRegex("interval ([0-9,.-]+( %)?) to \\1[);]");
        CadenceSketch.Program().Worth(Costs with { Screen = new StatedRange(500) }, Cadence).Text().Should().Contain("no screening at all gains most");
    }
}
