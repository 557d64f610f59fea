using ScreenStats.Statistics.Comparison;

namespace ScreenStats.Statistics.Tests.Comparison;

public sealed class FisherExactTests
{
    private static readonly Gen<(long X1, long N1, long X2, long N2)> Cases =
        Gen.Select(Gen.Long[0, 60], Gen.Long[0, 60], Gen.Double[0, 1], Gen.Double[0, 1])
            .Select((n1, n2, one, two) => ((long)Math.Round(n1 * one), n1, (long)Math.Round(n2 * two), n2));

    [Fact]
    public void Every_row_of_the_reference_table_is_met() =>
        Mismatches.ShouldBeNone(ReferenceTable.Load("fisher-exact"), row =>
        {
            var (x1, n1, x2, n2) = (row.Count("first_successes"), row.Count("first_trials"), row.Count("second_successes"), row.Count("second_trials"));
            return
            [
                row.Mismatch("two_sided", FisherExact.TwoSided(x1, n1, x2, n2)), row.Mismatch("mid_p", FisherExact.TwoSidedMidP(x1, n1, x2, n2)),
                row.Mismatch("greater", FisherExact.Greater(x1, n1, x2, n2)), row.Mismatch("less", FisherExact.Less(x1, n1, x2, n2)),
                row.Mismatch("greater_mid_p", FisherExact.GreaterMidP(x1, n1, x2, n2)), row.Mismatch("less_mid_p", FisherExact.LessMidP(x1, n1, x2, n2)),
            ];
        });

    [Fact]
    public void At_least_fifty_cases_come_from_elsewhere() =>
        ReferenceTable.Load("fisher-exact").Count(row => row.Kind == "independent").Should().BeGreaterThanOrEqualTo(50);

    [Fact]
    public void Groups_and_events_may_change_places() => Cases.Sample(c =>
    {
        var p = FisherExact.TwoSided(c.X1, c.N1, c.X2, c.N2);
        return Near(p, FisherExact.TwoSided(c.X2, c.N2, c.X1, c.N1))
            && Near(p, FisherExact.TwoSided(c.N1 - c.X1, c.N1, c.N2 - c.X2, c.N2))
            && Near(FisherExact.Greater(c.X1, c.N1, c.X2, c.N2), FisherExact.Less(c.X2, c.N2, c.X1, c.N1))
            && Near(FisherExact.TwoSidedMidP(c.X1, c.N1, c.X2, c.N2), FisherExact.TwoSidedMidP(c.X2, c.N2, c.X1, c.N1));
    });

    [Fact]
    public void The_mid_p_is_never_greater_and_one_side_is_never_greater_than_both() => Cases.Sample(c =>
    {
        var p = FisherExact.TwoSided(c.X1, c.N1, c.X2, c.N2);
        var smaller = Math.Min(FisherExact.Greater(c.X1, c.N1, c.X2, c.N2), FisherExact.Less(c.X1, c.N1, c.X2, c.N2));
        return p is >= 0 and <= 1 && FisherExact.TwoSidedMidP(c.X1, c.N1, c.X2, c.N2) <= p && smaller <= p * (1 + 1e-12)
            && FisherExact.GreaterMidP(c.X1, c.N1, c.X2, c.N2) <= FisherExact.Greater(c.X1, c.N1, c.X2, c.N2);
    });

    [Fact]
    public void Both_mid_p_tails_add_up_to_one() => Cases.Sample(c =>
        Math.Abs(FisherExact.GreaterMidP(c.X1, c.N1, c.X2, c.N2) + FisherExact.LessMidP(c.X1, c.N1, c.X2, c.N2) - 1) < 1e-11);

    [Fact]
    public void Ten_million_runs_in_each_group_give_the_same_as_the_sum_over_every_table()
    {
        // Events are few enough to sum every table by neighbours' ratios, from the top, in this test's own way.
        const long n = 10_000_000;
        var terms = new double[501];
        terms[250] = 1;
        for (var k = 250; k < 500; k++) terms[k + 1] = terms[k] * (500 - k) / (k + 1) * (n - k) / (n - 500 + k + 1.0);
        for (var k = 250; k > 0; k--) terms[k - 1] = terms[k] * k / (500 - k + 1) * (n - 500 + k) / (n - k + 1.0);
        var expected = terms.Where(term => term <= terms[280] * (1 + 1e-7)).Sum() / terms.Sum();
        FisherExact.TwoSided(280, n, 220, n).Should().BeApproximately(expected, 1e-11 * expected);
    }

    [Fact]
    public void A_table_with_an_empty_margin_proves_nothing()
    {
        foreach (var (x1, n1, x2, n2) in new[] { (0L, 0L, 0L, 0L), (0, 0, 3, 9), (0, 5, 0, 9), (5, 5, 9, 9) })
        {
            FisherExact.TwoSided(x1, n1, x2, n2).Should().Be(1);
            FisherExact.Greater(x1, n1, x2, n2).Should().Be(1);
            FisherExact.Less(x1, n1, x2, n2).Should().Be(1);
            FisherExact.TwoSidedMidP(x1, n1, x2, n2).Should().Be(0.5);
        }
    }

    [Fact]
    public void Tables_too_far_out_for_a_double_are_zero_and_not_an_error() =>
        FisherExact.TwoSided(10_000_000, 10_000_000, 0, 10_000_000).Should().BeInRange(0, 1e-300);

    [Fact]
    public void Counts_that_cannot_be_are_refused_by_name()
    {
        FluentActions.Invoking(() => FisherExact.TwoSided(5, 3, 1, 2)).Should().Throw<ArgumentOutOfRangeException>().WithParameterName("firstSuccesses");
        FluentActions.Invoking(() => FisherExact.Less(1, 3, -1, 2)).Should().Throw<ArgumentOutOfRangeException>().WithParameterName("secondSuccesses");
        FluentActions.Invoking(() => FisherExact.Greater(0, -1, 1, 2)).Should().Throw<ArgumentOutOfRangeException>().WithParameterName("firstTrials");
        FluentActions.Invoking(() => FisherExact.TwoSidedMidP(0, 1, 0, -2)).Should().Throw<ArgumentOutOfRangeException>().WithParameterName("secondTrials");
    }

    private static bool Near(double one, double other) => Math.Abs(one - other) <= 1e-11 * one;
}
