using ScreenStats.Statistics.Numerics;
using ScreenStats.Statistics.Regression;
using ScreenStats.Statistics.Regression.Ranks;
using ScreenStats.Statistics.Tests.Heterogeneity;

namespace ScreenStats.Statistics.Tests.Regression.Ranks;

public sealed class RankingTests
{
    [Fact]
    public void Every_row_of_the_reference_table_is_met() => Mismatches.ShouldBeNone(ReferenceTable.Load("ranks"), row =>
    {
        var options = new RankOptions { Replicates = 100_000, Seed = 5 };
        var (first, second) = (row.Numbers("first"), row.Numbers("second"));
        var ranks = row.Text("distribution") == "beta"
            ? Ranking.OfRates([.. first.Zip(second, (a, b) => new BetaDistribution(a, b))], options)
            : Ranking.OfEffects([.. first.Zip(second)], options);
        return [.. GroupRows.Mismatches(row, "mean_ranks", ranks.Select(rank => (double?)rank.MeanRank)), .. GroupRows.Mismatches(row, "chances_highest", ranks.Select(rank => (double?)rank.ChanceHighest))];
    });

    [Fact]
    public void The_table_has_at_least_fifty_independent_rows() =>
        ReferenceTable.Load("ranks").Count(row => row.Kind == "independent").Should().BeGreaterThanOrEqualTo(50);

    [Fact]
    public void Ranks_and_chances_add_up_and_repeat_with_their_seed() => Gen.Select(Gen.Double[-2, 2], Gen.Double[0, 1]).Array[1, 12].Sample(effects =>
    {
        var options = new RankOptions { Replicates = 500, Seed = 3 };
        var ranks = Ranking.OfEffects(effects, options);
        ranks.Should().Equal(Ranking.OfEffects(effects, options));
        ranks.Sum(rank => rank.ChanceHighest).Should().BeApproximately(1, 1e-9);
        ranks.Sum(rank => rank.MeanRank).Should().BeApproximately(effects.Length * (effects.Length + 1) / 2.0, 1e-6);
        ranks.Should().OnlyContain(rank => rank.Lowest >= 1 && rank.Highest <= effects.Length && rank.Highest >= rank.Lowest);
    }, iter: 40);

    [Fact]
    public void What_is_known_without_error_is_ranked_without_error()
    {
        var ranks = Ranking.OfEffects([(1, 0), (3, 0), (2, 0)]);
        ranks.Select(rank => rank.MeanRank).Should().Equal(3, 1, 2);
        ranks[1].ChanceHighest.Should().Be(1);
        Ranking.OfRates([new BetaDistribution(0.01, 50)]).Single().ChanceHighest.Should().Be(1);
    }

    [Fact]
    public void Figures_outside_their_domain_are_refused()
    {
        FluentActions.Invoking(() => Ranking.OfEffects([])).Should().Throw<ArgumentOutOfRangeException>();
        FluentActions.Invoking(() => Ranking.OfEffects([(0, -1)])).Should().Throw<ArgumentOutOfRangeException>();
        FluentActions.Invoking(() => Ranking.OfEffects([(0, 1)], new RankOptions { Replicates = 1 })).Should().Throw<ArgumentOutOfRangeException>();
    }
}
