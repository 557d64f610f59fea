using ScreenStats.Statistics.Comparison;
using ScreenStats.Statistics.Comparison.Paired;
using ScreenStats.Statistics.Proportions;

namespace ScreenStats.Statistics.Tests.Comparison.Paired;

public sealed class PairedProportionTests
{
    private static readonly Gen<long> Count = Gen.OneOf(Gen.Long[0, 3], Gen.Long[0, 60], Gen.Long[0, 200_000]);

    private static readonly Gen<PairedCounts> Counts =
        Gen.Select(Count, Count, Count, Count).Select((a, b, c, d) => new PairedCounts(a, b, c, d)).Where(counts => counts.Pairs > 0);

    [Fact]
    public void Every_row_of_the_reference_table_is_met() =>
        Mismatches.ShouldBeNone(ReferenceTable.Load("paired-proportions"), row =>
        {
            var counts = new PairedCounts(row.Count("both"), row.Count("first_only"), row.Count("second_only"), row.Count("neither"));
            var interval = PairedDifference.Newcombe(counts, row.Has("confidence") ? row.Number("confidence") : 0.95);
            return
            [
                row.Mismatch("value", interval.Value), row.Mismatch("lower", interval.Lower), row.Mismatch("upper", interval.Upper),
                row.Mismatch("exact", McNemar.TwoSided(counts)), row.Mismatch("mid_p", McNemar.TwoSidedMidP(counts)),
                row.Mismatch("greater", McNemar.Greater(counts)), row.Mismatch("less", McNemar.Less(counts)),
            ];
        });

    [Fact]
    public void Interval_and_test_have_at_least_fifty_independent_rows_each()
    {
        var rows = ReferenceTable.Load("paired-proportions").Where(row => row.Kind == "independent").ToList();
        rows.Count(row => row.Has("lower")).Should().BeGreaterThanOrEqualTo(50);
        rows.Count(row => row.Has("mid_p")).Should().BeGreaterThanOrEqualTo(50);
    }

    [Fact]
    public void Readings_that_change_places_turn_the_difference_round_and_the_odds_ratio_upside_down() => Counts.Sample(c =>
    {
        var swapped = new PairedCounts(c.Both, c.SecondOnly, c.FirstOnly, c.Neither);
        var (one, other) = (PairedDifference.Newcombe(c), PairedDifference.Newcombe(swapped));
        var (odds, turned) = (PairedOddsRatio.ConditionalExact(c), PairedOddsRatio.ConditionalExact(swapped));
        return Math.Abs(one.Lower!.Value + other.Upper!.Value) < 1e-14 && one.Value == -other.Value
            && McNemar.TwoSided(c) == McNemar.TwoSided(swapped) && McNemar.TwoSidedMidP(c) == McNemar.TwoSidedMidP(swapped)
            && McNemar.Greater(c) == McNemar.Less(swapped)
            && (odds.Upper is { } upper ? Math.Abs((upper * turned.Lower!.Value) - 1) < 1e-10 : turned.Lower == 0);
    });

    [Fact]
    public void Limits_lie_in_their_domain_and_around_the_value_and_widen_with_confidence() =>
        Gen.Select(Counts, Gen.Double[0.5, 0.999], Gen.Double[0.5, 0.999]).Sample((c, one, other) =>
        {
            var narrow = PairedDifference.Newcombe(c, Math.Min(one, other));
            var wide = PairedDifference.Newcombe(c, Math.Max(one, other));
            return -1 <= wide.Lower && wide.Lower <= narrow.Lower + 1e-15 && narrow.Lower <= narrow.Value && narrow.Value <= narrow.Upper
                && narrow.Upper <= wide.Upper + 1e-15 && wide.Upper <= 1;
        });

    [Fact]
    public void The_mid_p_is_never_greater_than_the_exact_p() => Counts.Sample(c =>
        McNemar.TwoSidedMidP(c) <= McNemar.TwoSided(c) && McNemar.TwoSided(c) is >= 0 and <= 1 && McNemar.TwoSidedMidP(c) >= 0);

    [Fact]
    public void Concordant_pairs_do_not_move_the_test() => Gen.Select(Counts, Count).Sample((c, more) =>
        McNemar.TwoSided(c) == McNemar.TwoSided(new PairedCounts(c.Both + more, c.FirstOnly, c.SecondOnly, more)));

    [Fact]
    public void The_odds_ratio_leaves_out_one_just_where_a_tail_is_below_half_the_level() => Counts.Sample(c =>
    {
        var odds = PairedOddsRatio.ConditionalExact(c);
        return McNemar.Greater(c) < 0.025 == odds.Lower > 1 && McNemar.Less(c) < 0.025 == odds.Upper < 1;
    });

    // The square of the exact limits' odds: 1 first-only of 8 discordant pairs, Clopper-Pearson .0031597 to .5265097 (R 4.2.2 binom.test).
    [Fact]
    public void The_odds_ratio_of_the_discordant_pairs_has_the_odds_of_the_exact_limits()
    {
        var odds = PairedOddsRatio.ConditionalExact(new PairedCounts(1, 1, 7, 12));
        var share = ProportionInterval.ClopperPearson(1, 8).Interval!.Value;
        odds.Value.Should().BeApproximately(1.0 / 7, 1e-15);
        odds.Lower.Should().BeApproximately(share.Lower / (1 - share.Lower), 1e-14);
        odds.Upper.Should().BeApproximately(share.Upper / (1 - share.Upper), 1e-12);
        odds.Lower.Should().BeApproximately(0.0031597 / (1 - 0.0031597), 1e-7);
        odds.Upper.Should().BeApproximately(0.5265097 / (1 - 0.5265097), 1e-6);
    }

    [Fact]
    public void Without_pairs_or_without_discordant_ones_nothing_is_invented()
    {
        PairedDifference.Newcombe(0, 0, 0, 0).Reason.Should().Be(UndefinedReason.NoTrials);
        McNemar.TwoSided(new PairedCounts(5, 0, 0, 5)).Should().Be(1);
        McNemar.TwoSidedMidP(new PairedCounts(5, 0, 0, 5)).Should().Be(1);
        var odds = PairedOddsRatio.ConditionalExact(new PairedCounts(5, 0, 0, 5));
        (odds.Value, odds.Lower, odds.Upper, odds.Reason, odds.UpperReason).Should()
            .Be((null, 0.0, null, UndefinedReason.NoDiscordantPairs, UndefinedReason.NoDiscordantPairs));
        PairedOddsRatio.ConditionalExact(new PairedCounts(5, 3, 0, 5)).UpperReason.Should().Be(UndefinedReason.OddsRatioUnbounded);
    }

    [Fact]
    public void Figures_that_cannot_be_are_refused_by_name()
    {
        FluentActions.Invoking(() => new PairedCounts(-1, 0, 0, 0)).Should().Throw<ArgumentOutOfRangeException>().WithParameterName("both");
        FluentActions.Invoking(() => new PairedCounts(0, -1, 0, 0)).Should().Throw<ArgumentOutOfRangeException>().WithParameterName("firstOnly");
        FluentActions.Invoking(() => new PairedCounts(0, 0, -1, 0)).Should().Throw<ArgumentOutOfRangeException>().WithParameterName("secondOnly");
        FluentActions.Invoking(() => new PairedCounts(long.MaxValue, 1, 0, 0)).Should().Throw<ArgumentOutOfRangeException>().WithParameterName("neither");
        FluentActions.Invoking(() => PairedDifference.Newcombe(1, 2, 3, 4, 1)).Should().Throw<ArgumentOutOfRangeException>().WithParameterName("confidence");
        FluentActions.Invoking(() => PairedOddsRatio.ConditionalExact(default, 0)).Should().Throw<ArgumentOutOfRangeException>().WithParameterName("confidence");
    }
}
