using ScreenStats.Statistics.Clusters;
using ScreenStats.Statistics.Comparison;

namespace ScreenStats.Statistics.Tests.Clusters;

/// <summary>A difference between two parts in which the same clusters stand.</summary>
public sealed class PairedClustersTests
{
    [Fact]
    public void Every_row_of_the_reference_table_is_met() => Mismatches.ShouldBeNone(ReferenceTable.Load("paired-clusters"), row =>
    {
        var made = PairedClusters.Difference(
            ClusterTables.Read(row, "first_events", "first_trials").Zip(ClusterTables.Read(row, "second_events", "second_trials"), (first, second) => (first.Trials, first.Events, second.Trials, second.Events)),
            row.Number("confidence"));
        return [row.Mismatch("difference", made.Difference), row.Mismatch("error", made.StandardError), row.Mismatch("lower", made.Limits?.Lower), row.Mismatch("upper", made.Limits?.Upper)];
    });

    // By hand: equal trials, so each site adds a sixth of its own difference less the mean; differences 1, 2, 3, 4, 5, 3 of 100, mean 3, squares 4 + 1 + 0 + 1 + 4 + 0 = 10.
    // Variance 6/5 x 10 x (0.01/6)², Student's 97.5 % on 5 degrees of freedom 2.570582 (tables).
    [Fact]
    public void Limits_are_those_of_the_mean_of_the_clusters_differences_where_all_are_alike_in_size()
    {
        var limits = PairedClusters.Difference([(100, 10, 100, 11), (100, 20, 100, 22), (100, 5, 100, 8), (100, 60, 100, 64), (100, 30, 100, 35), (100, 1, 100, 4)], 0.95).Limits!.Value;
        var reach = 2.570582 * Math.Sqrt(1.2 * 10) * 0.01 / 6;

        limits.Lower.Should().BeApproximately(0.03 - reach, 1e-8);
        limits.Upper.Should().BeApproximately(0.03 + reach, 1e-8);
        limits.Lower.Should().BePositive("the clusters rose alike, however unlike they are");
        ProportionDifference.Newcombe(144, 600, 126, 600).Lower.Should().BeNegative();
    }

    [Fact]
    public void The_other_way_round_is_the_same_with_its_sign_turned_and_a_cluster_without_trials_adds_nothing() => Gen.Select(ClusterTables.Any, ClusterTables.Any).Sample((one, other) =>
    {
        var paired = one.Zip(other, (a, b) => (a.Trials, a.Events, b.Trials, b.Events)).ToArray();
        var (there, back) = (PairedClusters.Difference([.. paired, (0, 0, 0, 0)]), PairedClusters.Difference(paired.Select(cluster => (cluster.Item3, cluster.Item4, cluster.Item1, cluster.Item2))));
        return ClusterTables.Near(there.Difference, -back.Difference) && ClusterTables.Near(there.Limits!.Value.Lower, -back.Limits!.Value.Upper)
            && there.Clusters == paired.Length && there.Limits.Value.Contains(there.Difference!.Value);
    });

    [Fact]
    public void What_cannot_be_told_says_why()
    {
        PairedClusters.Difference([]).Reason.Should().Be(UndefinedReason.NoTrials);
        PairedClusters.Difference([(10, 1, 0, 0), (5, 2, 0, 0)]).Reason.Should().Be(UndefinedReason.NoTrials);
        PairedClusters.Difference([(10, 1, 12, 3)]).Reason.Should().Be(UndefinedReason.FewerThanTwoClusters);
        FluentActions.Invoking(() => PairedClusters.Difference([(10, 11, 12, 3), (4, 1, 4, 1)])).Should().Throw<ArgumentOutOfRangeException>();
        FluentActions.Invoking(() => PairedClusters.Difference([(10, 1, 12, 3), (4, 1, 4, 1)], 1)).Should().Throw<ArgumentOutOfRangeException>();
    }
}
