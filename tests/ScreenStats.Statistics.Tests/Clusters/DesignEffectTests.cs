using ScreenStats.Statistics.Clusters;
using ScreenStats.Statistics.Proportions;

namespace ScreenStats.Statistics.Tests.Clusters;

public sealed class DesignEffectTests
{
    private static readonly Gen<(long Trials, long Events)[]> Clusters =
        Gen.Select(Gen.Long[1, 200], Gen.Double[0, 1]).Select((n, share) => (n, (long)(n * share))).Array[2, 40];

    [Fact]
    public void Every_row_of_the_reference_table_is_met() =>
        Mismatches.ShouldBeNone(ReferenceTable.Load("design-effects"), row =>
        {
            var events = row.Numbers("events");
            var sums = ClusterSums.From(row.Numbers("trials").Select((n, i) => ((long)n, (long)events[i])));
            var effect = DesignEffect.Of(sums);
            var widened = WidenedInterval.Wilson(sums.Events, sums.Trials, effect, row.Number("confidence"));
            return
            [
                row.Mismatch("design_effect", effect.Raw), row.Mismatch("variance", effect.Variance),
                row.Mismatch("quantile", widened.Quantile), row.Mismatch("lower", widened.Lower), row.Mismatch("upper", widened.Upper),
            ];
        });

    [Fact]
    public void The_sums_give_what_the_clusters_give() => Clusters.Sample(clusters =>
    {
        double n = clusters.Sum(c => c.Trials);
        double x = clusters.Sum(c => c.Events);
        if (x == 0 || x == n) return true;
        var p = x / n;
        var m = clusters.Length;
        var v = m / ((m - 1) * n * n) * clusters.Sum(c => Math.Pow(c.Events - (c.Trials * p), 2));
        var expected = n * v / (p * (1 - p));
        return Math.Abs(DesignEffect.Of(ClusterSums.From(clusters)).Raw!.Value - expected) <= 1e-9 * Math.Max(1, expected);
    });

    [Fact]
    public void Order_of_the_clusters_and_clusters_without_trials_do_not_matter() => Clusters.Sample(clusters =>
        ClusterSums.From(clusters) == ClusterSums.From([(0, 0), .. clusters.Reverse()]));

    [Fact]
    public void Events_and_non_events_have_the_same_design_effect() => Clusters.Sample(clusters =>
    {
        var one = DesignEffect.Of(ClusterSums.From(clusters));
        var other = DesignEffect.Of(ClusterSums.From(clusters.Select(c => (c.Trials, c.Trials - c.Events))));
        return one.Raw is null ? other.Raw is null : Math.Abs(one.Raw.Value - other.Raw!.Value) <= 1e-12 * Math.Max(1, one.Raw.Value);
    });

    [Fact]
    public void Sums_beyond_sixty_four_bits_do_not_overflow()
    {
        var sums = ClusterSums.From([(4_000_000_000, 4_000_000), (5_000_000_000, 6_000_000), (4_500_000_000, 4_400_000)]);
        sums.TrialsSquared.Should().BeGreaterThan(long.MaxValue);
        DesignEffect.Of(sums).Raw.Should().BeApproximately(70445.51225010381, 1e-7, "worked out in exact fractions (Python 3.11, fractions)");
    }

    [Theory]
    [InlineData(new long[] { 10, 12 }, new long[] { 0, 0 }, UndefinedReason.NoEvents)]
    [InlineData(new long[] { 10, 12 }, new long[] { 10, 12 }, UndefinedReason.OnlyEvents)]
    [InlineData(new long[] { 10 }, new long[] { 3 }, UndefinedReason.FewerThanTwoClusters)]
    [InlineData(new long[] { 0 }, new long[] { 0 }, UndefinedReason.NoTrials)]
    public void Where_it_is_undefined_it_is_one_and_says_why(long[] trials, long[] events, UndefinedReason reason)
    {
        var effect = DesignEffect.Of(ClusterSums.From(trials.Zip(events)));
        effect.Raw.Should().BeNull();
        effect.Variance.Should().BeNull();
        effect.Value.Should().Be(1);
        effect.Reason.Should().Be(reason);
    }

    [Fact]
    public void It_is_never_below_one_though_the_raw_value_may_be()
    {
        var effect = DesignEffect.Of(ClusterSums.From([(10, 5), (10, 5), (10, 5)]));
        effect.Raw.Should().Be(0);
        effect.Value.Should().Be(1);
    }

    [Fact]
    public void The_largest_is_chosen_and_a_defined_one_before_an_undefined()
    {
        var none = DesignEffect.Of(ClusterSums.From([(10, 0), (10, 0)]));
        var even = DesignEffect.Of(ClusterSums.From([(10, 5), (10, 5), (10, 5)]));
        var uneven = DesignEffect.Of(ClusterSums.From([(10, 0), (10, 10)]));
        DesignEffect.Largest(none, even, uneven).Should().BeSameAs(uneven);
        DesignEffect.Largest(none, even).Should().BeSameAs(even);
    }

    [Fact]
    public void A_widened_interval_holds_the_unwidened_one() =>
        Gen.Select(Gen.Long[1, 5000], Gen.Double[0, 1], Gen.Double[1, 20], Gen.Long[0, 60]).Sample((trials, share, effect, clusters) =>
        {
            var successes = (long)(trials * share);
            var plain = ProportionInterval.Wilson(successes, trials);
            var widened = WidenedInterval.Wilson(successes, trials, effect, clusters);
            return widened.Lower <= plain.Lower + 1e-15 && widened.Upper >= plain.Upper - 1e-15;
        });

    [Theory]
    [InlineData(0, null)]
    [InlineData(1, null)]
    [InlineData(2, 1L)]
    [InlineData(29, 28L)]
    [InlineData(30, null)]
    public void Students_quantile_is_used_from_two_to_twenty_nine_clusters(long clusters, long? degreesOfFreedom) =>
        WidenedInterval.Wilson(5, 100, 1.5, clusters).DegreesOfFreedom.Should().Be(degreesOfFreedom);

    [Fact]
    public void A_design_effect_of_one_with_many_clusters_is_wilson() =>
        WidenedInterval.Wilson(81, 263, 1, 500).Interval.Should().Be(ProportionInterval.Wilson(81, 263).Interval);

    [Fact]
    public void Without_trials_the_widened_estimate_is_undefined() =>
        WidenedInterval.Wilson(0, 0, 1, 0).Reason.Should().Be(UndefinedReason.NoTrials);

    [Fact]
    public void Sums_no_clusters_can_have_are_refused()
    {
        var calls = new Action[]
        {
            () => _ = new ClusterSums(0, 10, 1, 100, 10, 1), () => _ = new ClusterSums(11, 10, 1, 100, 10, 1),
            () => _ = new ClusterSums(2, 10, 11, 100, 10, 1), () => _ = new ClusterSums(2, 10, 1, 9, 9, 1),
            () => _ = new ClusterSums(2, 10, 3, 60, 2, 3), () => _ = new ClusterSums(2, 10, 3, 60, 18, 2),
            () => _ = default(ClusterSums).With(3, 4), () => WidenedInterval.Wilson(1, 10, 0.9, 5), () => WidenedInterval.Wilson(1, 10, 1, -1),
        };
        foreach (var call in calls) call.Should().Throw<ArgumentOutOfRangeException>();
    }
}
