using ScreenStats.Statistics.Clusters;

namespace ScreenStats.Statistics.Tests.Clusters;

public sealed class IntraclassCorrelationTests
{
    [Fact]
    public void Every_row_of_the_reference_table_is_met() => Mismatches.ShouldBeNone(ReferenceTable.Load("intraclass-correlations"), row =>
    {
        var clusters = ClusterTables.Read(row, "events", "trials");
        var result = IntraclassCorrelation.AnalysisOfVariance(clusters);
        return
        [
            row.Mismatch("between", result.MeanSquareBetween), row.Mismatch("within", result.MeanSquareWithin), row.Mismatch("size", result.MeanClusterSize),
            row.Mismatch("correlation", result.Value), row.Mismatch("fleiss_cuzick", IntraclassCorrelation.FleissCuzick(clusters).Value),
        ];
    });

    [Fact]
    public void It_is_at_most_one_and_the_same_for_events_and_non_events() => ClusterTables.Any.Sample(clusters =>
    {
        var one = IntraclassCorrelation.AnalysisOfVariance(clusters).Value;
        var other = IntraclassCorrelation.AnalysisOfVariance(ClusterTables.Mirrored(clusters)).Value;
        return (one is null || one <= 1 + 1e-12) && ClusterTables.Near(one, other);
    });

    [Fact]
    public void Order_and_clusters_without_trials_do_not_matter() => ClusterTables.Any.Sample(clusters => ClusterTables.Near(
        IntraclassCorrelation.AnalysisOfVariance(clusters).Value, IntraclassCorrelation.AnalysisOfVariance([.. clusters.Reverse(), (0, 0)]).Value));

    [Fact]
    public void It_is_one_where_each_cluster_is_all_or_nothing_and_negative_where_all_are_alike()
    {
        IntraclassCorrelation.AnalysisOfVariance([(5, 0), (5, 5), (5, 5)]).Value.Should().BeApproximately(1, 1e-14);
        IntraclassCorrelation.AnalysisOfVariance([(4, 2), (4, 2), (4, 2)]).Value.Should().BeApproximately(-1.0 / 3, 1e-14, "-1 / (n - 1) is the least there is");
    }

    [Theory]
    [InlineData(new long[] { 10, 12 }, new long[] { 0, 0 }, UndefinedReason.NoEvents)]
    [InlineData(new long[] { 10, 12 }, new long[] { 10, 12 }, UndefinedReason.OnlyEvents)]
    [InlineData(new long[] { 10 }, new long[] { 3 }, UndefinedReason.FewerThanTwoClusters)]
    [InlineData(new long[] { 1, 1, 1 }, new long[] { 1, 0, 1 }, UndefinedReason.OneTrialInEachCluster)]
    [InlineData(new long[] { 0 }, new long[] { 0 }, UndefinedReason.NoTrials)]
    public void Where_it_is_undefined_it_says_why(long[] trials, long[] events, UndefinedReason reason)
    {
        List<(long, long)> clusters = [.. trials.Zip(events)];
        IntraclassCorrelation.AnalysisOfVariance(clusters).Reason.Should().Be(reason);
        IntraclassCorrelation.AnalysisOfVariance(clusters).Value.Should().BeNull();
        IntraclassCorrelation.FleissCuzick(clusters).Reason.Should().Be(reason);
    }

    [Fact]
    public void Counts_that_cannot_be_are_refused()
    {
        var call = () => IntraclassCorrelation.AnalysisOfVariance([(3, 4)]);
        call.Should().Throw<ArgumentOutOfRangeException>();
        var nothing = () => IntraclassCorrelation.AnalysisOfVariance([(0, 1)]);
        nothing.Should().Throw<ArgumentOutOfRangeException>();
    }
}
