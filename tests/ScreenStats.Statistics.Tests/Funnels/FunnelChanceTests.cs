using ScreenStats.Statistics.Funnels;

namespace ScreenStats.Statistics.Tests.Funnels;

public sealed class FunnelChanceTests
{
    [Fact]
    public void Every_row_of_the_table_is_met() => Mismatches.ShouldBeNone(ReferenceTable.Load("funnel-chances"), row =>
        [row.Mismatch("p_value", FunnelChance.TwoSided(row.Number("target"), (long)row.Number("events"), (long)row.Number("trials"), row.Number("design_effect")))]);

    [Fact]
    public void A_design_effect_makes_chances_larger_and_the_middle_is_certain() => Gen.Select(Gen.Double[0.001, 0.999], Gen.Long[1, 5000], Gen.Double[0, 1]).Sample((target, trials, part) =>
    {
        var events = (long)(part * trials);
        var p = FunnelChance.TwoSided(target, events, trials);
        var wide = FunnelChance.TwoSided(target, events, trials, 3);
        p.Should().BeInRange(0, 1);
        wide.Should().BeGreaterThanOrEqualTo(p * (1 - 1e-9));
        FunnelChance.TwoSided(1 - target, trials - events, trials).Should().BeApproximately(p, 1e-9);
    });

    [Fact]
    public void Figures_outside_their_domain_are_refused()
    {
        FluentActions.Invoking(() => FunnelChance.TwoSided(0, 1, 2)).Should().Throw<ArgumentOutOfRangeException>();
        FluentActions.Invoking(() => FunnelChance.TwoSided(0.5, 3, 2)).Should().Throw<ArgumentOutOfRangeException>();
        FluentActions.Invoking(() => FunnelChance.TwoSided(0.5, 0, 0)).Should().Throw<ArgumentOutOfRangeException>();
        FluentActions.Invoking(() => FunnelChance.TwoSided(0.5, 1, 2, 0.9)).Should().Throw<ArgumentOutOfRangeException>();
    }
}
