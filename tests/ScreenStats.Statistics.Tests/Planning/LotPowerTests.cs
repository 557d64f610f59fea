using ScreenStats.Statistics.Comparison;
using ScreenStats.Statistics.Multiplicity;
using ScreenStats.Statistics.Planning;

namespace ScreenStats.Statistics.Tests.Planning;

public sealed class LotPowerTests
{
    private static readonly LotQuestion Typical = new() { ExpectedRate = 0.002, Excess = 0.05, Lots = 8 };

    [Fact]
    public void Every_row_of_the_power_table_is_met() => Mismatches.ShouldBeNone(ReferenceTable.Load("plans-lot-power"), row =>
    {
        var question = Read(row) with { Threshold = row.Number("threshold") };
        return [row.Mismatch("power", LotPower.Of(question, row.Count("runs")))];
    });

    [Fact]
    public void Every_row_of_the_runs_table_is_met() => Mismatches.ShouldBeNone(ReferenceTable.Load("plans-lot-runs"), row =>
    {
        var plan = LotPower.Runs(Read(row) with { Power = row.Number("power") });
        plan.Runs.Should().Be(row.Count("runs"), row.ToString());
        return [row.Mismatch("achieved", plan.Achieved), row.Mismatch("one_fewer", plan.PowerWithOneFewer)];
    });

    [Fact]
    public void The_power_stays_reached_as_far_as_it_says_and_one_run_fewer_misses_it() =>
        Gen.Select(Gen.Double[0, 0.02], Gen.Double[0.03, 0.4], Gen.Int[2, 30], Gen.Double[0.5, 0.95]).Sample(
            (rate, excess, lots, power) =>
            {
                var question = new LotQuestion { ExpectedRate = rate, Excess = excess, Lots = lots, Power = power };
                var plan = LotPower.Runs(question);
                return plan.Achieved >= power && (plan.PowerWithOneFewer is null || plan.PowerWithOneFewer < power)
                    && Enumerable.Range(0, 20).All(i => LotPower.Of(question, plan.Runs!.Value + i) >= power);
            },
            iter: 30);

    [Fact]
    public void The_number_that_flags_is_the_least_that_the_evaluations_rule_flags()
    {
        var plan = LotPower.Runs(Typical);
        var (runs, from, elsewhere) = (plan.Runs!.Value, plan.FlaggedFrom!.Value, plan.RefutedInOtherLots!.Value);
        double Smallest(long events) => MultipleComparisons.Holm(
            [Hypergeometric.UpperTail(events, 8 * runs, events + elsewhere, runs), .. Enumerable.Repeat(1.0, 7)])[0];
        Smallest(from).Should().BeLessThan(0.01);
        Smallest(from - 1).Should().BeGreaterThanOrEqualTo(0.01);
    }

    [Fact]
    public void More_excess_is_found_more_surely_and_more_lots_less_surely() =>
        Gen.Select(Gen.Double[0, 0.02], Gen.Double[0.01, 0.2], Gen.Int[2, 30], Gen.Long[5, 400]).Sample((rate, excess, lots, runs) =>
        {
            var question = new LotQuestion { ExpectedRate = rate, Excess = excess, Lots = lots, OtherRuns = 5000 };
            var power = LotPower.Of(question, runs);
            return LotPower.Of(question with { Excess = excess * 1.5 }, runs) >= power - 1e-12 && LotPower.Of(question with { Lots = lots + 5 }, runs) <= power + 1e-12;
        });

    [Fact]
    public void An_excess_that_ten_million_runs_do_not_show_is_undefined() =>
        LotPower.Runs(Typical with { ExpectedRate = 0.3, Excess = 1e-7, Lots = 2, OtherRuns = 100 }).Reason.Should().Be(UndefinedReason.NoSampleLargeEnough);

    [Fact]
    public void Figures_outside_their_domain_are_refused_by_name()
    {
        var bad = new (LotQuestion Question, string Name)[]
        {
            (Typical with { ExpectedRate = -0.1 }, "ExpectedRate"), (Typical with { Excess = 0 }, "Excess"), (Typical with { Excess = 0.999 }, "Excess"), (Typical with { Lots = 1 }, "Lots"),
            (Typical with { OtherRuns = 0 }, "OtherRuns"), (Typical with { Power = 1 }, "Power"), (Typical with { Threshold = 0 }, "Threshold"),
        };
        foreach (var (question, name) in bad)
        {
            var call = () => LotPower.Runs(question);
            call.Should().Throw<ArgumentOutOfRangeException>().WithParameterName(name);
        }

        var none = () => LotPower.Of(Typical, 0);
        none.Should().Throw<ArgumentOutOfRangeException>().WithParameterName("runs");
    }

    private static LotQuestion Read(ReferenceRow row) => new()
    {
        ExpectedRate = row.Number("rate"), Excess = row.Number("excess"), Lots = (int)row.Count("lots"), OtherRuns = row.Has("other_runs") ? row.Count("other_runs") : null,
    };
}
