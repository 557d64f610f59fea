using System.Globalization;
using ScreenStats.Statistics.Monitoring.Scans;

namespace ScreenStats.Statistics.Tests.Monitoring.Scans;

public sealed class ScanStatisticTests
{
    [Fact]
    public void Every_row_of_the_reference_table_is_met() => Mismatches.ShouldBeNone(ReferenceTable.Load("scan-probabilities"), row =>
    {
        var k = row.Count("in_window");
        var chance = row.Text("method") switch
        {
            "exact" => ScanStatistic.Exact(k, row.Count("events"), Share(row.Text("rate"))),
            "approximate" => ScanStatistic.Approximate(k, row.Count("events"), Share(row.Text("rate"))),
            "poisson" => ScanStatistic.Poisson(k, row.Number("rate"), row.Number("windows")),
            _ => ScanStatistic.Bernoulli(k, row.Count("windows"), row.Count("events"), row.Number("rate")),
        };
        return [row.Mismatch("chance", chance.Value)];
    });

    [Fact]
    public void Each_method_has_at_least_fifty_independent_rows() => ReferenceTable.Load("scan-probabilities").Where(row => row.Kind == "independent").GroupBy(row => row.Text("method"))
        .Should().HaveCount(4).And.OnlyContain(group => group.Count() >= 50);

    [Fact]
    public void Every_row_of_the_table_of_likelihood_ratios_is_met() => Mismatches.ShouldBeNone(ReferenceTable.Load("likelihood-ratio-scores"), row =>
        [row.Mismatch("score", LikelihoodRatioScore.Bernoulli(row.Count("inside"), row.Count("trials_inside"), row.Count("events"), row.Count("trials")))]);

    [Fact]
    public void A_fuller_window_is_rarer_and_the_approximation_is_close_where_it_is_rare() => Gen.Select(Gen.Int[2, 9], Gen.Int[2, 25], Gen.Int[2, 5]).Sample((k, events, cells) =>
    {
        var exact = ScanStatistic.Exact(k, events, 1.0 / cells);
        var fuller = ScanStatistic.Exact(k + 1, events, 1.0 / cells);
        return exact.Value is not { } p || fuller.Value is not { } less || (less <= p + 1e-12 && p is >= 0 and <= 1
            && (p > 0.1 || k * 2 <= events || Math.Abs(ScanStatistic.Approximate(k, events, 1.0 / cells).Value!.Value - p) < 0.03 * p + 1e-12));
    });

    // With more than half of the events in one window no two such windows are apart, and the approximation is exact (Wallenstein and Naus, from memory).
    [Fact]
    public void With_more_than_half_of_the_events_the_approximation_is_exact() => Gen.Select(Gen.Int[2, 20], Gen.Int[2, 6]).Sample((events, cells) =>
    {
        var k = (events / 2) + 1;
        return ScanStatistic.Exact(k, events, 1.0 / cells).Value is not { } p || Math.Abs(ScanStatistic.Approximate(k, events, 1.0 / cells).Value!.Value - p) < 1e-10;
    });

    [Fact]
    public void A_longer_row_or_a_higher_rate_makes_a_full_window_likelier() =>
        Gen.Select(Gen.Int[1, 6], Gen.Int[1, 12], Gen.Int[1, 60], Gen.Double[0.01, 0.9]).Sample((k, window, trials, rate) =>
        {
            double Chance(int n, double p) => ScanStatistic.Bernoulli(k, window, n, p).Value!.Value;
            return Chance(trials, rate) <= Chance(trials + 1, rate) + 1e-14 && Chance(trials, rate) <= Chance(trials, Math.Min(1, rate * 1.1)) + 1e-13;
        });

    [Fact]
    public void Edges_are_exact_and_what_cannot_be_summed_says_why()
    {
        ScanStatistic.Exact(1, 5, 0.2).Value.Should().Be(1);
        ScanStatistic.Exact(6, 5, 0.2).Value.Should().Be(0);
        ScanStatistic.Exact(3, 5, 0.23).Reason.Should().Be(UndefinedReason.TooManyTerms);
        ScanStatistic.Exact(30, 200, 1.0 / 26).Reason.Should().Be(UndefinedReason.TooManyTerms);
        ScanStatistic.Bernoulli(9, 65, 1000, 0.01).Reason.Should().Be(UndefinedReason.TooManyTerms);
        ScanStatistic.Bernoulli(1, 7, 365, 0.01).Value.Should().BeApproximately(1 - Math.Pow(0.99, 365), 1e-13);
        ScanStatistic.Poisson(1, 0.1, 10).Value.Should().BeApproximately(1 - Math.Exp(-1), 1e-15);
        ScanStatistic.Poisson(3, 0, 10).Value.Should().Be(0);
        ScanStatistic.Poisson(3, 500, 10).Value.Should().Be(1);
        ScanStatistic.Exact(3, 12, 0.2).Exact.Should().BeTrue();
        ScanStatistic.Approximate(3, 12, 0.2).Exact.Should().BeFalse();
    }

    [Fact]
    public void Figures_outside_their_domain_are_refused()
    {
        foreach (var call in new Action[]
        {
            () => ScanStatistic.Exact(0, 5, 0.2), () => ScanStatistic.Exact(1, -1, 0.2), () => ScanStatistic.Approximate(1, 5, 0), () => ScanStatistic.Approximate(1, 5, double.NaN),
            () => ScanStatistic.Poisson(2, -1, 5), () => ScanStatistic.Poisson(2, 1, 1.9), () => ScanStatistic.Bernoulli(2, 0, 5, 0.1), () => ScanStatistic.Bernoulli(2, 5, 5, 1.1),
            () => LikelihoodRatioScore.Bernoulli(3, 2, 5, 10), () => LikelihoodRatioScore.Bernoulli(1, 8, 9, 10), () => LikelihoodRatioScore.Bernoulli(1, 11, 2, 10),
        })
        {
            call.Should().Throw<ArgumentOutOfRangeException>();
        }
    }

    private static double Share(string text) =>
        text.StartsWith("1/", StringComparison.Ordinal) ? 1 / double.Parse(text[2..], CultureInfo.InvariantCulture) : double.Parse(text, CultureInfo.InvariantCulture);
}
