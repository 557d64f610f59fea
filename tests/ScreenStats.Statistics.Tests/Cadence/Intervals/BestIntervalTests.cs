using ScreenStats.Statistics.Cadence.Intervals;

namespace ScreenStats.Statistics.Tests.Cadence.Intervals;

public sealed class BestIntervalTests
{
    [Fact]
    public void Every_row_of_the_reference_table_is_met() => Mismatches.ShouldBeNone(ReferenceTable.Load("best-intervals"), row =>
    {
        var stakes = new ScreeningStakes(
            row.Number("incidence"), row.Number("value"), row.Number("cost"), row.Number("window"), row.Number("sensitivity"));
        return
        [
            row.Mismatch("every", BestInterval.Of(stakes).Value), row.Mismatch("net", BestInterval.NetAtBest(stakes).Value),
            row.Mismatch("short", BestInterval.ShortIntervalApproximation(stakes).Value),
            // Printed to six decimals.
            row.Has("break_even") && Math.Abs(row.Number("break_even") - BestInterval.BreakEvenIncidence(stakes).Value!.Value) > 5e-7 ? row + ": break-even" : null,
        ];
    });

    [Fact]
    public void No_interval_nearby_or_far_gains_more() =>
        Gen.Select(Gen.Double[0.01, 1], Gen.Double[1, 14], Gen.Double[0.2, 40], Gen.Double[-3, 1].Select(e => Math.Pow(10, e))).Sample((s, window, times, factor) =>
        {
            var even = 2 * 5 / (s * 4000 * window * window);
            var stakes = new ScreeningStakes(Math.Min(1, even * times), 4000, 5, window, s);
            var other = BestInterval.NetPerPersonDay(stakes, window * factor);
            var best = BestInterval.Of(stakes);
            return best.Value is not { } days
                ? best.Reason == UndefinedReason.NoIntervalPays && other <= 1e-9
                : days <= window * (1 + 1e-12) && other <= BestInterval.NetAtBest(stakes).Value + 1e-9;
        });

    [Fact]
    public void Below_break_even_never_above_it_always()
    {
        var even = BestInterval.BreakEvenIncidence(new ScreeningStakes(0, 200, 12, 7, 0.6)).Value!.Value;
        BestInterval.Of(new ScreeningStakes(even * 0.999, 200, 12, 7, 0.6)).Reason.Should().Be(UndefinedReason.NoIntervalPays);
        BestInterval.Of(new ScreeningStakes(even * 1.001, 200, 12, 7, 0.6)).Value.Should().BeInRange(6.5, 7);
    }

    [Fact]
    public void What_has_no_best_interval_says_why()
    {
        BestInterval.Of(new ScreeningStakes(0, 200, 12, 7)).Reason.Should().Be(UndefinedReason.NoIntervalPays);
        BestInterval.Of(new ScreeningStakes(0.01, 200, 0, 7)).Reason.Should().Be(UndefinedReason.ScreensCostNothing);
        BestInterval.Of(new ScreeningStakes(0.01, 200, 12, 0)).Reason.Should().Be(UndefinedReason.NoIntervalPays, "the delay takes the whole window");
        BestInterval.Of(new ScreeningStakes(0.01, 200, 12, 7, 0)).Reason.Should().Be(UndefinedReason.NoIntervalPays);
        BestInterval.Of(new ScreeningStakes(1, 1e15, 1e-5, 7)).Reason.Should().Be(UndefinedReason.TooLarge);
        BestInterval.BreakEvenIncidence(new ScreeningStakes(0, 0, 0, 7)).Reason.Should().Be(UndefinedReason.NothingAtStake);
        BestInterval.BreakEvenIncidence(new ScreeningStakes(0, 1, 12, 1)).Reason.Should().Be(UndefinedReason.NoIntervalPays);
        BestInterval.NetAtBest(new ScreeningStakes(0, 200, 12, 7)).Reason.Should().Be(UndefinedReason.NoIntervalPays);
    }

    [Fact]
    public void A_screen_costs_what_its_false_positives_cost_too() => ScreeningStakes.CostPerScreen(5, 0.98, 350).Should().BeApproximately(12, 1e-12);

    [Fact]
    public void Figures_outside_their_domain_are_refused_by_name()
    {
        var calls = new (Action Call, string Name)[]
        {
            (() => _ = new ScreeningStakes(-1, 1, 1, 1), "incidence"), (() => _ = new ScreeningStakes(0, -1, 1, 1), "valuePerInfectiousDay"),
            (() => _ = new ScreeningStakes(0, 1, double.NaN, 1), "costPerScreen"), (() => _ = new ScreeningStakes(0, 1, 1, -1), "windowDays"),
            (() => _ = new ScreeningStakes(0, 1, 1, 1, 2), "sensitivity"), (() => BestInterval.NetPerPersonDay(new ScreeningStakes(0, 1, 1, 1), 0), "everyDays"),
            (() => ScreeningStakes.CostPerScreen(1, 1.1, 1), "specificity"),
        };
        foreach (var (call, name) in calls) call.Should().Throw<ArgumentOutOfRangeException>().WithParameterName(name);
    }
}
