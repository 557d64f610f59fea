using ScreenStats.Counting.Programs.Cadence;
using ScreenStats.Counting.Programs.Costs;
using ScreenStats.Evaluation.Cadence.Rows;
using ScreenStats.Evaluation.Tests.Worth;
using ScreenStats.Evaluation.Worth;

namespace ScreenStats.Evaluation.Tests.Cadence;

/// <summary>Over long times it matters whether somebody can be infected twice: without it what screening saves shrinks by the length of the time alone.</summary>
public class CadenceImmunityTests
{
    private static readonly CadenceSettings Cadence = WorthSketch.Cadence with { Incidence = new StatedRange(0.002) };
    private static readonly CostSettings Costs = WorthSketch.Exact with { InfectionAverted = new StatedRange(20_000), InfectiousDay = new StatedRange(3_000) };

    private static CadenceSettings Over(int days, StatedRange? immunity) => Cadence with { Days = days, ImmunityDays = immunity };

    private static double Averted(int days, StatedRange? immunity) => CadenceSketch.Program().Cadence(Over(days, immunity)).Value("weekly", CadenceMeasure.InfectionsAverted);

    private static WorthFindings Worth(int days, StatedRange? immunity) => CadenceSketch.Program().Worth(Costs, Over(days, immunity));

    [Fact]
    public void Within_the_days_of_immunity_it_changes_nothing_and_beyond_them_more_is_averted()
    {
        Averted(91, new StatedRange(91)).Should().Be(Averted(91, null));
        Averted(91, new StatedRange(300)).Should().Be(Averted(91, null));
        Averted(728, new StatedRange(120)).Should().BeGreaterThan(Averted(728, new StatedRange(240))).And.BeGreaterThan(2 * Averted(728, null));
    }

    [Fact]
    public void The_verdict_no_longer_turns_with_the_days_alone()
    {
        double EachDay(int days, StatedRange? immunity) => Worth(days, immunity).Judged!.NetBenefit.Estimate!.Value / days;
        EachDay(91, null).Should().BePositive();
        (EachDay(1092, null) / EachDay(91, null)).Should().BeLessThan(0, "nobody is infected twice");
        (EachDay(1092, new StatedRange(60)) / EachDay(91, new StatedRange(60))).Should().BeGreaterThan(0.5);
    }

    [Fact]
    public void It_is_an_assumption_with_a_range_that_is_drawn()
    {
        var ranged = CadenceSketch.Program().Cadence(CadenceSketch.Ranged with { Days = 365, ImmunityDays = new StatedRange(120, 80, 200, "a study"), Incidence = new StatedRange(0.003) });
        ranged.Assumption("immunity-days").Should().Match<CadenceAssumption>(row => row.Value == 120 && row.Lower == 80 && row.Upper == 200 && row.Unit == "days" && row.Origin == CadenceOrigin.Stated);
        ranged.Swings.Should().Contain(row => row.Assumption == "immunity-days");
        var none = CadenceSketch.Program().Cadence(CadenceSketch.Exact).Assumption("immunity-days");
        none.Should().Match<CadenceAssumption>(row => row.Value == null && row.Origin == CadenceOrigin.NotKnown && row.Source == "nobody is infected twice within the days looked at");
    }

    [Fact]
    public void More_than_half_a_year_without_it_is_cautioned_about_here_and_there_and_the_verdict_names_its_days()
    {
        const string Caution = "longer times understate what screening saves";
        Worth(183, null).Text().Should().Contain("Over 183 days it matters").And.Contain(Caution);
        Worth(182, null).Text().Should().NotContain(Caution);
        Worth(365, new StatedRange(180)).Text().Should().NotContain(Caution);
        CadenceSketch.Program().Cadence(Over(183, null)).Text().Should().Contain(Caution);
        CadenceSketch.Program().Cadence(Over(183, new StatedRange(180))).Text().Should().NotContain(Caution);
        Worth(183, null).Verdict.Should().StartWith("At these costs, over 183 days, and with one infection averted worth 20,000 EUR, ");
    }
}
