using ScreenStats.Statistics.Comparison;

namespace ScreenStats.Statistics.Tests.Comparison;

public sealed class HypergeometricTests
{
    private static readonly Gen<(long Observed, long Population, long Successes, long Draws)> Cases =
        Gen.Select(Gen.Long[1, 400], Gen.Double[0, 1], Gen.Double[0, 1], Gen.Double[-0.1, 1.1])
            .Select((n, s, d, o) => ((long)(o * Math.Min(s, d) * n), n, (long)(s * n), (long)(d * n)));

    [Fact]
    public void Every_row_of_the_reference_table_is_met() =>
        Mismatches.ShouldBeNone(ReferenceTable.Load("hypergeometric"), row =>
        {
            var (k, n, s, d) = (row.Count("observed"), row.Count("population"), row.Count("successes"), row.Count("draws"));
            return
            [
                row.Mismatch("point", Hypergeometric.Probability(k, n, s, d)), row.Mismatch("upper", Hypergeometric.UpperTail(k, n, s, d)),
                row.Mismatch("lower", Hypergeometric.LowerTail(k, n, s, d)),
            ];
        });

    [Fact]
    public void Both_tails_share_only_the_observed_number() => Cases.Sample(c =>
        Math.Abs(Hypergeometric.UpperTail(c.Observed, c.Population, c.Successes, c.Draws) + Hypergeometric.LowerTail(c.Observed, c.Population, c.Successes, c.Draws)
            - Hypergeometric.Probability(c.Observed, c.Population, c.Successes, c.Draws) - 1) < 1e-11);

    [Fact]
    public void Probabilities_add_up_to_one() => Cases.Sample(c =>
        Math.Abs(Enumerable.Range(0, (int)c.Draws + 1).Sum(k => Hypergeometric.Probability(k, c.Population, c.Successes, c.Draws)) - 1) < 1e-11);

    [Fact]
    public void Draws_and_successes_change_places() => Cases.Sample(c =>
    {
        var one = Hypergeometric.UpperTail(c.Observed, c.Population, c.Successes, c.Draws);
        var other = Hypergeometric.UpperTail(c.Observed, c.Population, c.Draws, c.Successes);
        return Math.Abs(one - other) <= 1e-11 * one;
    });

    [Fact]
    public void Outside_what_can_occur_the_tails_are_exactly_zero_and_one()
    {
        Hypergeometric.UpperTail(0, 100, 5, 10).Should().Be(1);
        Hypergeometric.UpperTail(6, 100, 5, 10).Should().Be(0);
        Hypergeometric.LowerTail(5, 100, 5, 10).Should().Be(1);
        Hypergeometric.LowerTail(-1, 100, 5, 10).Should().Be(0);
        Hypergeometric.Probability(6, 100, 5, 10).Should().Be(0);
        Hypergeometric.UpperTail(0, 0, 0, 0).Should().Be(1);
        Hypergeometric.Probability(5, 10, 5, 10).Should().Be(1);
    }

    [Fact]
    public void Counts_that_cannot_be_are_refused()
    {
        foreach (var call in new Action[] { () => Hypergeometric.UpperTail(1, -1, 0, 0), () => Hypergeometric.UpperTail(1, 10, 11, 1), () => Hypergeometric.LowerTail(1, 10, 1, 11) })
            call.Should().Throw<ArgumentOutOfRangeException>();
    }
}
