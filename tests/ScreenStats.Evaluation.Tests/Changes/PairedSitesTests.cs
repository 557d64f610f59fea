using ScreenStats.Evaluation.Changes;
using ScreenStats.Evaluation.Changes.Differences;

namespace ScreenStats.Evaluation.Tests.Changes;

/// <summary>Limits of a difference between two parts in which the same sites stand.</summary>
public sealed class PairedSitesTests
{
    [Fact]
    public void Four_sites_on_both_sides_are_too_few()
    {
        PairedSites.Limits([(100, 10, 100, 11), (100, 20, 100, 22), (100, 5, 100, 8), (100, 60, 100, 64), (100, 30, 0, 0), (0, 0, 100, 4)], 0.95).Should().BeNull();
        PairedSites.Limits([(100, 10, 100, 11), (100, 20, 100, 22), (100, 5, 100, 8), (100, 60, 100, 64), (100, 30, 50, 9), (0, 0, 100, 4)], 0.95).Should().NotBeNull();
    }
}
