using ScreenStats.Statistics.Monitoring.Sequential.NormalSums;

namespace ScreenStats.Statistics.Tests.Monitoring.Sequential;

public sealed class NormalCumulativeSumTests
{
    [Fact]
    public void Every_run_length_of_the_table_is_met() => Mismatches.ShouldBeNone(ReferenceTable.Load("normal-cumulative-sums"), row =>
        [row.Mismatch("run_length", NormalCumulativeSum.AverageRunLength(row.Number("reference"), row.Number("limit"), row.Number("shift"), Sides(row), row.Number("head_start")).Value)]);

    [Fact]
    public void Every_approximation_of_the_table_is_met() => Mismatches.ShouldBeNone(ReferenceTable.Load("siegmund-approximations"), row =>
        [row.Mismatch("run_length", NormalCumulativeSum.Siegmund(row.Number("reference"), row.Number("limit"), row.Number("shift"), Sides(row)).Value)]);

    [Fact]
    public void Every_limit_of_the_table_is_met() => Mismatches.ShouldBeNone(ReferenceTable.Load("normal-sum-limits"), row =>
        [row.Mismatch("limit", NormalCumulativeSum.LimitFor(row.Number("reference"), row.Number("run_length"), Sides(row)).Value)]);

    [Fact]
    public void There_are_at_least_fifty_independent_rows() =>
        ReferenceTable.Load("normal-cumulative-sums").Count(row => row.Kind == "independent").Should().BeGreaterThanOrEqualTo(50);

    [Fact]
    public void A_limit_reaches_the_run_length_it_was_found_for() =>
        Gen.Select(Gen.Double[0.1, 1.5], Gen.Double[20, 5000], Gen.Bool).Sample(
            (reference, length, two) =>
            {
                var sides = two ? CumulativeSumSides.Two : CumulativeSumSides.One;
                return NormalCumulativeSum.LimitFor(reference, length, sides).Value is not { } limit
                    || Math.Abs((NormalCumulativeSum.AverageRunLength(reference, limit, 0, sides).Value!.Value / length) - 1) < 1e-9;
            },
            iter: 20);

    [Fact]
    public void A_larger_shift_a_lower_limit_and_a_head_start_signal_sooner() =>
        Gen.Select(Gen.Double[0.1, 1], Gen.Double[0.5, 7], Gen.Double[0, 2]).Sample(
            (reference, limit, shift) =>
            {
                double At(double h, double d, double start) => NormalCumulativeSum.AverageRunLength(reference, h, d, CumulativeSumSides.One, start).Value!.Value;
                var length = At(limit, shift, 0);
                return At(limit, shift + 0.3, 0) < length && At(limit * 0.9, shift, 0) < length && At(limit, shift, limit / 2) < length;
            },
            iter: 50);

    [Theory]
    [InlineData(CumulativeSumSides.One, 0.5, 0)]
    [InlineData(CumulativeSumSides.Two, 0, 0)]
    [InlineData(CumulativeSumSides.Two, 0.5, 2)]
    public void A_simulated_average_agrees_within_three_standard_errors(CumulativeSumSides sides, double shift, double start)
    {
        var random = new Random(7);
        var lengths = Enumerable.Range(0, 6000).Select(_ =>
        {
            double up = start, down = start;
            for (var n = 1; ; n++)
            {
                var z = shift + Simulated.Normal(random);
                (up, down) = (Math.Max(0, up + z - 0.5), Math.Max(0, down - z - 0.5));
                if (up >= 4 || (sides == CumulativeSumSides.Two && down >= 4)) return (double)n;
            }
        }).ToArray();
        Simulated.ShouldAgree(lengths, NormalCumulativeSum.AverageRunLength(0.5, 4, shift, sides, start).Value!.Value);
    }

    [Fact]
    public void What_the_method_cannot_tell_is_undefined_and_figures_outside_their_domain_are_refused()
    {
        NormalCumulativeSum.AverageRunLength(1, 40, 0).Reason.Should().Be(UndefinedReason.TooLarge);
        NormalCumulativeSum.LimitFor(1.5, 1.1).Reason.Should().Be(UndefinedReason.NoLimitFound);
        FluentActions.Invoking(() => NormalCumulativeSum.AverageRunLength(-1, 4, 0)).Should().Throw<ArgumentOutOfRangeException>();
        FluentActions.Invoking(() => NormalCumulativeSum.AverageRunLength(0.5, 0, 0)).Should().Throw<ArgumentOutOfRangeException>();
        FluentActions.Invoking(() => NormalCumulativeSum.AverageRunLength(0.5, 4, double.NaN)).Should().Throw<ArgumentOutOfRangeException>();
        FluentActions.Invoking(() => NormalCumulativeSum.AverageRunLength(0.5, 4, 0, CumulativeSumSides.One, 4)).Should().Throw<ArgumentOutOfRangeException>();
        FluentActions.Invoking(() => NormalCumulativeSum.LimitFor(0.5, 1)).Should().Throw<ArgumentOutOfRangeException>();
    }

    private static CumulativeSumSides Sides(ReferenceRow row) => row.Text("sides") == "two" ? CumulativeSumSides.Two : CumulativeSumSides.One;
}
