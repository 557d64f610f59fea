using ScreenStats.Statistics.Clusters;
using ScreenStats.Statistics.Proportions;

namespace ScreenStats.Statistics.Tests.Clusters;

public sealed class RaoScottTests
{
    private static readonly List<(long Trials, long Events)> Some = [(10, 2), (12, 5), (9, 1)];
    private static readonly List<(long Trials, long Events)> None = [(10, 0), (12, 0), (9, 0)];
    private static readonly List<(long Trials, long Events)> Alike = [(10, 5), (10, 5), (10, 5)];

    [Fact]
    public void Every_row_of_the_reference_table_is_met() => Mismatches.ShouldBeNone(ReferenceTable.Load("clustered-tests"), row =>
    {
        var first = ClusterTables.Read(row, "first_events", "first_trials");
        var second = ClusterTables.Read(row, "second_events", "second_trials");
        var (naive, own) = (RaoScott.Naive(first, second), RaoScott.OwnDesignEffects(first, second));
        var (pooled, donner) = (RaoScott.PooledDesignEffect(first, second), RaoScott.Donner(first, second));
        own.FirstFactor.Should().Be(DesignEffect.Of(ClusterSums.From(first)).Raw);
        own.SecondFactor.Should().Be(DesignEffect.Of(ClusterSums.From(second)).Raw);
        return
        [
            row.Mismatch("naive", naive.ChiSquare), row.Mismatch("naive_p", naive.PValue), row.Mismatch("own", own.ChiSquare), row.Mismatch("own_p", own.PValue),
            row.Mismatch("pooled_effect", pooled.FirstFactor), row.Mismatch("pooled", pooled.ChiSquare), row.Mismatch("pooled_p", pooled.PValue),
            row.Mismatch("correlation", IntraclassCorrelation.Pooled([first, second]).Value), row.Mismatch("first_factor", donner.FirstFactor),
            row.Mismatch("second_factor", donner.SecondFactor), row.Mismatch("donner", donner.ChiSquare), row.Mismatch("donner_p", donner.PValue),
        ];
    });

    [Fact]
    public void The_order_of_the_groups_does_not_matter() => Gen.Select(ClusterTables.Any, ClusterTables.Any).Sample((one, other) =>
        ClusterTables.Near(RaoScott.OwnDesignEffects(one, other).PValue, RaoScott.OwnDesignEffects(other, one).PValue)
        && ClusterTables.Near(RaoScott.PooledDesignEffect(one, other).PValue, RaoScott.PooledDesignEffect(other, one).PValue)
        && ClusterTables.Near(RaoScott.Donner(one, other).PValue, RaoScott.Donner(other, one).PValue));

    [Fact]
    public void Non_events_give_the_same_as_events() => Gen.Select(ClusterTables.Any, ClusterTables.Any).Sample((one, other) =>
        ClusterTables.Near(RaoScott.OwnDesignEffects(one, other).PValue, RaoScott.OwnDesignEffects(ClusterTables.Mirrored(one), ClusterTables.Mirrored(other)).PValue)
        && ClusterTables.Near(RaoScott.Donner(one, other).PValue, RaoScott.Donner(ClusterTables.Mirrored(one), ClusterTables.Mirrored(other)).PValue));

    [Fact]
    public void A_group_against_itself_does_not_differ() => ClusterTables.Any.Sample(clusters =>
        RaoScott.OwnDesignEffects(clusters, clusters).ChiSquare is null or < 1e-20);

    [Fact]
    public void A_group_without_an_event_has_no_design_effect_of_its_own_but_can_be_tested_with_the_pooled_one()
    {
        RaoScott.OwnDesignEffects(Some, None).Reason.Should().Be(UndefinedReason.NoEvents);
        RaoScott.PooledDesignEffect(Some, None).PValue.Should().BeInRange(0, 0.2);
        RaoScott.Donner(Some, None).PValue.Should().BeInRange(0, 0.2);
    }

    [Fact]
    public void What_cannot_be_tested_says_why()
    {
        RaoScott.Naive([], Some).Reason.Should().Be(UndefinedReason.NoTrials);
        RaoScott.Naive(None, None).Reason.Should().Be(UndefinedReason.NoEvents);
        RaoScott.OwnDesignEffects(ClusterTables.Mirrored(None), ClusterTables.Mirrored(None)).Reason.Should().Be(UndefinedReason.OnlyEvents);
        RaoScott.OwnDesignEffects([(10, 2)], Some).Reason.Should().Be(UndefinedReason.FewerThanTwoClusters);
        RaoScott.PooledDesignEffect([(10, 2)], Some).Reason.Should().Be(UndefinedReason.FewerThanTwoClusters);
        RaoScott.OwnDesignEffects(Alike, Some).Reason.Should().Be(UndefinedReason.ClustersAllAlike);
        RaoScott.PooledDesignEffect(Alike, Alike).Reason.Should().Be(UndefinedReason.ClustersAllAlike);
        RaoScott.Donner([(1, 0), (1, 1)], [(1, 1), (1, 1)]).Reason.Should().Be(UndefinedReason.OneTrialInEachCluster);
        RaoScott.Naive([(10, 2)], Some).PValue.Should().NotBeNull("the naive test needs no clusters");
    }
}
