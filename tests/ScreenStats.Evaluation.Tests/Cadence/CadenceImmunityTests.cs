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
    public void What_was_done_goes_on_as_it_was_however_many_days_are_looked_at()
    {
        foreach (var days in new[] { 91, 182, 365, 730 })
        {
            foreach (var immunity in new[] { 10.0, 60, 180, 400 })
            {
                var findings = CadenceSketch.Program().Cadence(Over(days, new StatedRange(immunity)));
                var done = findings.Options.Single(option => option.IsAsDone).Option;
                var infections = findings.Value(done, CadenceMeasure.TruePositives) / findings.Value(done, CadenceMeasure.Detection);
                infections.Should().BeApproximately(0.002 * findings.People * days, 1e-6 * days, $"over {days} days with {immunity} days of immunity");
            }
        }
    }

    [Fact]
    public void What_screening_averts_grows_with_the_days_where_immunity_ends()
    {
        Averted(91, new StatedRange(1)).Should().BeGreaterThan(Averted(91, null), "without days of immunity the not yet infected grow fewer");
        foreach (var immunity in new[] { 120.0, 240 })
            (Averted(728, new StatedRange(immunity)) / Averted(91, new StatedRange(immunity))).Should().BeGreaterThan(4);
        (Averted(728, null) / Averted(91, null)).Should().BeLessThan(4);
    }

    [Fact]
    public void A_level_at_which_more_than_all_would_be_immune_is_answered_all_the_same()
    {
        var settings = Over(365, new StatedRange(400)) with { Incidence = new StatedRange(0.05) };
        CadenceSketch.Program().Cadence(settings).Value("weekly", CadenceMeasure.InfectionsAverted).Should().BeGreaterThan(0);
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
        none.Should().Match<CadenceAssumption>(row => row.Value == null && row.Origin == CadenceOrigin.NotKnown && row.Source == "nobody is infected twice within the days looked at, nor immune at their beginning");
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
