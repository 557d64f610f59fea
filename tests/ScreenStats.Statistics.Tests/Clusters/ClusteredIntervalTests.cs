using ScreenStats.Statistics.Clusters;
using ScreenStats.Statistics.Proportions;

namespace ScreenStats.Statistics.Tests.Clusters;

public sealed class ClusteredIntervalTests
{
    [Fact]
    public void Every_row_of_the_reference_table_is_met() => Mismatches.ShouldBeNone(ReferenceTable.Load("clustered-intervals"), row =>
    {
        var sums = ClusterSums.From(ClusterTables.Read(row, "events", "trials"));
        var exact = KornGraubardInterval.Of(sums, row.Number("confidence"));
        var wald = ClusteredInterval.Wald(sums, row.Number("confidence"));
        return
        [
            row.Mismatch("effective", exact.EffectiveTrials), row.Mismatch("lower", exact.Lower), row.Mismatch("upper", exact.Upper),
            row.Mismatch("wald_lower", wald.Lower), row.Mismatch("wald_upper", wald.Upper),
        ];
    });

    [Fact]
    public void Korn_and_Graubards_limits_hold_the_exact_ones() => ClusterTables.Any.Sample(clusters =>
    {
        var sums = ClusterSums.From(clusters);
        var plain = ProportionInterval.ClopperPearson(sums.Events, sums.Trials);
        var clustered = KornGraubardInterval.Of(sums);
        return clustered.EffectiveTrials <= sums.Trials && clustered.Lower <= plain.Lower * (1 + 1e-9) && clustered.Upper >= plain.Upper * (1 - 1e-9);
    });

    [Fact]
    public void Non_events_mirror_events() => ClusterTables.Any.Sample(clusters =>
    {
        var one = KornGraubardInterval.Of(ClusterSums.From(clusters));
        var other = KornGraubardInterval.Of(ClusterSums.From(ClusterTables.Mirrored(clusters)));
        return ClusterTables.Near(one.Lower, 1 - other.Upper) && ClusterTables.Near(one.Upper, 1 - other.Lower);
    });

    [Fact]
    public void The_interval_on_effective_trials_holds_the_plain_one() => ClusterTables.Any.Sample(clusters =>
    {
        var sums = ClusterSums.From(clusters);
        var plain = ProportionInterval.Wilson(sums.Events, sums.Trials);
        var effective = ClusteredInterval.Effective(IntervalMethod.Wilson, sums);
        return effective.Lower <= plain.Lower + 1e-12 && effective.Upper >= plain.Upper - 1e-12;
    });

    [Fact]
    public void Where_no_design_effect_can_be_estimated_nothing_is_widened_and_the_reason_stands_beside()
    {
        var none = KornGraubardInterval.Of(ClusterSums.From([(20, 0), (30, 0), (9, 0)]));
        none.Interval.Should().Be(ProportionInterval.ClopperPearson(0, 59).Interval);
        none.DegreesOfFreedom.Should().BeNull();
        none.DesignEffect.Reason.Should().Be(UndefinedReason.NoEvents);
        KornGraubardInterval.Of(ClusterSums.From([(20, 3)])).DesignEffect.Reason.Should().Be(UndefinedReason.FewerThanTwoClusters);
        KornGraubardInterval.Of(ClusterSums.From([(7, 7), (8, 8)])).Upper.Should().Be(1);
        ClusteredInterval.Wald(ClusterSums.From([(20, 0), (30, 0)])).Reason.Should().Be(UndefinedReason.NoEvents);
    }

    [Fact]
    public void Clusters_that_do_not_differ_at_all_are_capped_at_the_trials() =>
        KornGraubardInterval.Of(ClusterSums.From([(10, 5), (10, 5), (10, 5)])).Interval.Should().Be(ProportionInterval.ClopperPearson(15, 30).Interval);

    [Fact]
    public void Without_trials_all_are_undefined()
    {
        KornGraubardInterval.Of(default).Interval.Should().BeNull();
        KornGraubardInterval.Of(default).Estimate.Should().BeNull();
        ClusteredInterval.Wald(default).Reason.Should().Be(UndefinedReason.NoTrials);
        ClusteredInterval.Effective(IntervalMethod.Wilson, default).Reason.Should().Be(UndefinedReason.NoTrials);
    }
}
