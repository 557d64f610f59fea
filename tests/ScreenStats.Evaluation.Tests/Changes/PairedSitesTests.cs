using ScreenStats.Evaluation.Changes;
using ScreenStats.Statistics.Comparison;

namespace ScreenStats.Evaluation.Tests.Changes;

/// <summary>Limits of a difference between two parts in which the same sites stand.</summary>
public sealed class PairedSitesTests
{
    // By hand: equal trials, so each site adds a sixth of its own difference less the mean; differences 1, 2, 3, 4, 5, 3 of 100, mean 3, squares 4 + 1 + 0 + 1 + 4 + 0 = 10.
    // Variance 6/5 x 10 x (0.01/6)², Student's 97.5 % on 5 degrees of freedom 2.570582 (tables).
    [Fact]
    public void They_are_those_of_the_mean_of_the_sites_differences_where_all_sites_are_alike_in_size()
    {
        var limits = PairedSites.Limits([(100, 10, 100, 11), (100, 20, 100, 22), (100, 5, 100, 8), (100, 60, 100, 64), (100, 30, 100, 35), (100, 1, 100, 4)], 0.95)!.Value;
        var reach = 2.570582 * Math.Sqrt(1.2 * 10) * 0.01 / 6;

        limits.Lower.Should().BeApproximately(0.03 - reach, 1e-8);
        limits.Upper.Should().BeApproximately(0.03 + reach, 1e-8);
        limits.Lower.Should().BePositive("the sites rose alike, however unlike they are");
        ProportionDifference.Newcombe(144, 600, 126, 600).Lower.Should().BeNegative();
    }

    [Fact]
    public void Four_sites_on_both_sides_are_too_few()
    {
        PairedSites.Limits([(100, 10, 100, 11), (100, 20, 100, 22), (100, 5, 100, 8), (100, 60, 100, 64), (100, 30, 0, 0), (0, 0, 100, 4)], 0.95).Should().BeNull();
        PairedSites.Limits([(100, 10, 100, 11), (100, 20, 100, 22), (100, 5, 100, 8), (100, 60, 100, 64), (100, 30, 50, 9), (0, 0, 100, 4)], 0.95).Should().NotBeNull();
    }
}
