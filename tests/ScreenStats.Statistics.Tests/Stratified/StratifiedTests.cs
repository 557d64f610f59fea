using ScreenStats.Statistics.Comparison;
using ScreenStats.Statistics.Heterogeneity;
using ScreenStats.Statistics.Monitoring.Lots;
using ScreenStats.Statistics.Stratified;
using ScreenStats.Statistics.Tests.Heterogeneity;

namespace ScreenStats.Statistics.Tests.Stratified;

public sealed class StratifiedTests
{
    private static readonly Gen<TwoProportions[]> Strata = Gen.Select(Gen.Long[0, 300], Gen.Long[0, 300], Gen.Double[0, 1], Gen.Double[0, 1])
        .Select((n, m, p, q) => new TwoProportions((long)(p * p * n), n, (long)(q * q * m), m)).Array[1, 8];

    [Fact]
    public void Every_row_of_the_table_of_strata_is_met() => Mismatches.ShouldBeNone(ReferenceTable.Load("stratified-odds-ratios"), row =>
    {
        var strata = Read(row);
        var ratio = MantelHaenszel.OddsRatio(strata, row.Number("confidence"));
        var test = CochranMantelHaenszel.Test(strata);
        var same = BreslowDay.Test(strata);
        LotStratum[] lots = [.. strata.Select(s => new LotStratum(s.FirstSuccesses, s.FirstTrials, s.FirstSuccesses + s.SecondSuccesses, s.FirstTrials + s.SecondTrials))];
        var conditional = row.Has("conditional") ? LotRatio.Hypergeometric(lots, new LotRatioOptions { Confidence = row.Number("confidence") }).ToOthers : null;
        return
        [
            row.Mismatch("odds_ratio", ratio.Value), row.Mismatch("lower", ratio.Lower), row.Mismatch("upper", ratio.Upper), row.Mismatch("statistic", test.Statistic), row.Mismatch("p_value", test.PValue),
            row.Mismatch("corrected_statistic", test.CorrectedStatistic), row.Mismatch("corrected_p_value", test.CorrectedPValue), row.Mismatch("breslow_day", same.Statistic),
            row.Mismatch("breslow_day_p", same.PValue), row.Mismatch("tarone", same.CorrectedStatistic), row.Mismatch("degrees_of_freedom", same.DegreesOfFreedom),
            row.Mismatch("conditional", conditional?.Value), row.Mismatch("conditional_lower", conditional?.Lower), row.Mismatch("conditional_upper", conditional?.Upper),
            row.Has("exact_p") ? row.Mismatch("exact_p", StratifiedExactTest.Hypergeometric(lots).TwoSided) : null,
        ];
    });

    [Fact]
    public void Every_row_of_the_table_of_trends_is_met() => Mismatches.ShouldBeNone(ReferenceTable.Load("proportion-trends"), row =>
    {
        var result = CochranArmitage.Trend(GroupRows.Read(row), row.Numbers("scores"));
        return [row.Mismatch("statistic", result.Statistic), row.Mismatch("conditional_statistic", result.ConditionalStatistic), row.Mismatch("p_value", result.PValue), row.Mismatch("departure", result.Departure)];
    });

    [Fact]
    public void Both_tables_have_at_least_fifty_independent_rows()
    {
        foreach (var name in new[] { "stratified-odds-ratios", "proportion-trends" })
            ReferenceTable.Load(name).Count(row => row.Kind == "independent").Should().BeGreaterThanOrEqualTo(50, name);
    }

    [Fact]
    public void Groups_that_change_places_invert_the_ratio_and_order_changes_nothing() => Strata.Sample(strata =>
    {
        var ratio = MantelHaenszel.OddsRatio(strata);
        var swapped = MantelHaenszel.OddsRatio([.. strata.Select(s => new TwoProportions(s.SecondSuccesses, s.SecondTrials, s.FirstSuccesses, s.FirstTrials))]);
        var turned = MantelHaenszel.OddsRatio([.. strata.Reverse(), new TwoProportions(0, 5, 0, 0)]);
        var (test, other) = (CochranMantelHaenszel.Test(strata), CochranMantelHaenszel.Test([.. strata.Reverse()]));
        (test.Statistic == other.Statistic && BreslowDay.Test(strata).Statistic == BreslowDay.Test([.. strata.Reverse()]).Statistic).Should().BeTrue();
        if (test.PValue is { } p) p.Should().BeInRange(0, 1);
        (turned.Value == ratio.Value && turned.Reason == ratio.Reason).Should().BeTrue();
        if (ratio.Interval is not { } interval) return;
        swapped.Value!.Value.Should().BeApproximately(1 / ratio.Value!.Value, 1e-9 / ratio.Value.Value);
        swapped.Interval!.Value.Upper.Should().BeApproximately(1 / interval.Lower, 1e-8 / interval.Lower);
    }, iter: 200);

    [Fact]
    public void One_stratum_gives_its_own_odds_ratio_with_Woolfs_limits()
    {
        var ratio = MantelHaenszel.OddsRatio([new TwoProportions(56, 70, 48, 80)]);
        var woolf = OddsRatio.Woolf(56, 70, 48, 80);
        ratio.Value!.Value.Should().BeApproximately(woolf.Value!.Value, 1e-12);
        ratio.Interval!.Value.Lower.Should().BeApproximately(woolf.Lower!.Value, 1e-12);
        BreslowDay.Test([new TwoProportions(56, 70, 48, 80)]).Reason.Should().Be(UndefinedReason.OneStratumOnly);
    }

    [Fact]
    public void Strata_with_the_same_odds_ratio_leave_nothing_to_Breslow_and_Day()
    {
        var result = BreslowDay.Test([new TwoProportions(20, 40, 10, 40), new TwoProportions(200, 400, 100, 400), new TwoProportions(3, 4, 1, 2)]);
        result.OddsRatio!.Value.Should().BeApproximately(3, 1e-12);
        result.Statistic!.Value.Should().BeApproximately(0, 1e-12);
        result.CorrectedPValue!.Value.Should().BeApproximately(1, 1e-6);
    }

    // Raw rates say the first site is worse, each week says it is better: it tested mostly in the wave.
    [Fact]
    public void A_site_that_tested_mostly_in_the_wave_is_not_blamed_for_it()
    {
        TwoProportions[] weeks = [new(90, 900, 12, 100), new(1, 100, 15, 900)];
        (weeks.Sum(w => w.FirstSuccesses) / 1000.0).Should().BeGreaterThan(weeks.Sum(w => w.SecondSuccesses) / 1000.0);
        MantelHaenszel.OddsRatio(weeks).Value.Should().BeLessThan(1);
    }

    [Fact]
    public void Only_the_spacing_of_scores_matters_and_their_turn_turns_the_sign() => GroupRows.Drawn.Sample(groups =>
    {
        double[] scores = [.. groups.Select((_, i) => (double)((i * 7) % 5))];
        var result = CochranArmitage.Trend(groups, scores);
        if (result.Reason is not null) return true;
        var moved = CochranArmitage.Trend(groups, [.. scores.Select(s => (s * 30) + 1e6)]);
        var turned = CochranArmitage.Trend([.. groups.Reverse()], [.. scores.Reverse().Select(s => -s)]);
        return Math.Abs(moved.Score!.Value - result.Score!.Value) < 1e-9 * (1 + Math.Abs(result.Score.Value)) && Math.Abs(turned.Score!.Value + result.Score.Value) < 1e-9 * (1 + Math.Abs(result.Score.Value))
            && result.ConditionalStatistic <= result.Statistic && result.PValue is >= 0 and <= 1;
    }, iter: 200);

    [Fact]
    public void What_cannot_be_told_says_why()
    {
        MantelHaenszel.OddsRatio([]).Reason.Should().Be(UndefinedReason.NoComparableStratum);
        MantelHaenszel.OddsRatio([new(0, 5, 0, 5)]).Reason.Should().Be(UndefinedReason.NoComparableStratum);
        MantelHaenszel.OddsRatio([new(2, 5, 0, 5)]).Reason.Should().Be(UndefinedReason.OddsRatioUnbounded);
        MantelHaenszel.OddsRatio([new(0, 5, 2, 5)]).Should().Match<Estimate>(e => e.Value == 0 && e.Interval == null);
        CochranMantelHaenszel.Test([new(0, 5, 0, 5), new(1, 5, 0, 0)]).Reason.Should().Be(UndefinedReason.NoComparableStratum);
        BreslowDay.Test([new(2, 5, 0, 5), new(2, 5, 0, 5)]).Reason.Should().Be(UndefinedReason.OddsRatioUnbounded);
        BreslowDay.Test([new(0, 5, 2, 5), new(0, 5, 2, 5)]).Reason.Should().Be(UndefinedReason.OddsRatioZero);
        CochranArmitage.Trend([new(1, 5), new(2, 5)], [3, 3]).Reason.Should().Be(UndefinedReason.ScoresAllAlike);
        CochranArmitage.Trend([new(0, 5), new(0, 5)], [3, 4]).Reason.Should().Be(UndefinedReason.NoEvents);
        CochranArmitage.Trend([new(1, 5), new(2, 5)], [3, 4]).DeparturePValue.Should().BeNull();
        FluentActions.Invoking(() => CochranArmitage.Trend([new(1, 5)], [3, 4])).Should().Throw<ArgumentException>();
        FluentActions.Invoking(() => CochranArmitage.Trend([new(1, 5)], [double.NaN])).Should().Throw<ArgumentOutOfRangeException>();
    }

    private static TwoProportions[] Read(ReferenceRow row) => [.. row.Text("strata").Split(' ').Select(stratum =>
    {
        var counts = stratum.Split('/', ':').Select(part => long.Parse(part, System.Globalization.CultureInfo.InvariantCulture)).ToArray();
        return new TwoProportions(counts[0], counts[1], counts[2], counts[3]);
    })];
}
