using ScreenStats.Statistics.Comparison;
using ScreenStats.Statistics.Monitoring.Lots;

namespace ScreenStats.Statistics.Tests.Monitoring.Lots;

public sealed class LotRatioTests
{
    [Fact]
    public void Every_row_of_the_reference_table_is_met() => Mismatches.ShouldBeNone(ReferenceTable.Load("lot-ratios"), row =>
    {
        var options = new LotRatioOptions { Confidence = row.Number("confidence"), Overdispersion = row.Number("overdispersion") };
        var ratio = row.Text("model") == "binomial" ? LotRatio.Binomial(Strata.ReadShared(row), options) : LotRatio.Hypergeometric(Strata.ReadWhole(row), options);
        return
        [
            row.Mismatch("ratio", ratio.ToOthers.Value), row.Mismatch("lower", ratio.ToOthers.Lower), row.Mismatch("upper", ratio.ToOthers.Upper),
            row.Mismatch("to_expected", ratio.ToExpected.Value), row.Mismatch("to_expected_lower", ratio.ToExpected.Lower), row.Mismatch("to_expected_upper", ratio.ToExpected.Upper),
        ];
    });

    [Fact]
    public void With_one_stratum_it_is_the_conditional_odds_ratio() => Strata.Whole.Where(all => all.Length > 0).Sample(all =>
    {
        var s = all[0];
        var ratio = LotRatio.Hypergeometric([s]).ToOthers;
        if (ratio.Reason == UndefinedReason.NoInformativeStratum || s.Events - s.LotEvents == 0 || s.LotEvents == s.LotTrials) return true;
        var other = OddsRatio.ConditionalExact(s.LotEvents, s.LotTrials, s.Events - s.LotEvents, s.Trials - s.LotTrials);
        return Near(ratio.Value, other.Value) && Near(ratio.Lower, other.Lower) && Near(ratio.Upper, other.Upper);
    });

    [Fact]
    public void The_interval_holds_the_ratio_and_grows_with_confidence_and_overdispersion() => Gen.Select(Strata.Shared, Gen.Double[0.5, 0.99], Gen.Double[1, 30]).Sample((all, confidence, factor) =>
    {
        var plain = LotRatio.Binomial(all, new LotRatioOptions { Confidence = confidence });
        if (!plain.ToExpected.IsDefined) return plain.ToOthers.Reason == UndefinedReason.NoInformativeStratum && !plain.Material;
        var surer = LotRatio.Binomial(all, new LotRatioOptions { Confidence = confidence + 0.005 });
        var wider = LotRatio.Binomial(all, new LotRatioOptions { Confidence = confidence, Overdispersion = factor });
        bool Inside(Estimate inner, Estimate outer) => outer.Lower <= inner.Lower + 1e-9 && (inner.Upper is null ? outer.Upper is null : outer.Upper >= inner.Upper - 1e-9);
        return Inside(plain.ToOthers, surer.ToOthers) && Inside(plain.ToOthers, wider.ToOthers) && Inside(plain.ToExpected, wider.ToExpected)
            && (plain.ToOthers.Value is not { } value || (plain.ToOthers.Lower <= value && value <= plain.ToOthers.Upper));
    });

    [Fact]
    public void The_limits_leave_what_they_say() => Strata.Shared.Sample(all =>
    {
        var ratio = LotRatio.Binomial(all, new LotRatioOptions { Confidence = 0.9 });
        SharedStratum[] At(double r) => [.. all.Select(s => new SharedStratum(s.LotEvents, s.Events, r * s.Share / (1 - s.Share + (r * s.Share))))];
        return (ratio.ToOthers.Lower is not > 0 || Math.Abs(StratifiedExactTest.Binomial(At(ratio.ToOthers.Lower.Value)).AtLeastAsMany - 0.05) < 1e-9)
            && (ratio.ToOthers.Upper is not { } upper || Math.Abs(StratifiedExactTest.Binomial(At(upper)).AtMostAsMany - 0.05) < 1e-9);
    });

    // Exact, by summing over all outcomes: with shares, whatever the ratio, the interval misses it at most as often as stated.
    [Theory]
    [InlineData(0.3)]
    [InlineData(1)]
    [InlineData(5)]
    public void Coverage_is_never_below_the_confidence(double truth)
    {
        (long Events, double Share)[] strata = [(3, 0.1), (2, 0.4), (4, 0.25), (1, 0.7)];
        double covered = 0;
        for (long x = 0; x <= 10; x++)
        {
            var left = x;
            var seen = strata.Select(s =>
            {
                var own = Math.Min(left, s.Events);
                left -= own;
                return new SharedStratum(own, s.Events, s.Share);
            }).ToArray();
            var tilted = seen.Select(s => new SharedStratum(s.LotEvents, s.Events, truth * s.Share / (1 - s.Share + (truth * s.Share)))).ToArray();
            var test = StratifiedExactTest.Binomial(tilted);
            var interval = LotRatio.Binomial(seen).ToOthers;
            if (interval.Lower <= truth && (interval.Upper is null || truth <= interval.Upper)) covered += test.AtLeastAsMany + test.AtMostAsMany - 1;
        }

        covered.Should().BeInRange(0.95, 1 + 1e-9);
    }

    [Fact]
    public void A_trivial_excess_in_a_large_lot_is_not_material_and_a_bad_lot_is()
    {
        var large = LotRatio.Hypergeometric([new LotStratum(1300, 500_000, 2300, 1_000_000)]);
        large.ToOthers.Lower.Should().BeGreaterThan(1);
        large.Material.Should().BeFalse();
        LotRatio.Hypergeometric([new LotStratum(278, 30_000, 462, 903_408)]).Material.Should().BeTrue();
        LotRatio.Hypergeometric([new LotStratum(11, 30_000, 80, 903_408)]).Material.Should().BeTrue();
        LotRatio.Hypergeometric([new LotStratum(11, 30_000, 80, 903_408)], new LotRatioOptions { Overdispersion = 4 }).Material.Should().BeFalse();
        LotRatio.Hypergeometric([new LotStratum(11, 30_000, 80, 903_408)], new LotRatioOptions { MaterialFrom = 3 }).Material.Should().BeFalse();
    }

    [Fact]
    public void Where_the_others_have_no_event_there_is_a_lower_limit_only()
    {
        var ratio = LotRatio.Hypergeometric([new LotStratum(9, 1000, 9, 3000)]);
        ratio.ToOthers.Reason.Should().Be(UndefinedReason.NoEventsInOtherLots);
        ratio.ToOthers.Lower.Should().BeGreaterThan(1);
        ratio.ToExpected.Value.Should().BeApproximately(3, 1e-12);
        ratio.ToExpected.Upper.Should().BeApproximately(3, 1e-12);
    }

    [Fact]
    public void Options_outside_their_domain_are_refused_by_name()
    {
        foreach (var (options, name) in new[]
        {
            (new LotRatioOptions { Confidence = 1 }, "Confidence"), (new LotRatioOptions { Overdispersion = 0.9 }, "Overdispersion"), (new LotRatioOptions { MaterialFrom = 0 }, "MaterialFrom"),
            (new LotRatioOptions { Overdispersion = double.NaN }, "Overdispersion"), (new LotRatioOptions { MaterialFrom = double.PositiveInfinity }, "MaterialFrom"),
        })
        {
            FluentActions.Invoking(() => LotRatio.Hypergeometric([], options)).Should().Throw<ArgumentOutOfRangeException>().WithParameterName(name);
        }
    }

    private static bool Near(double? one, double? other) => one is { } a && other is { } b && Math.Abs(a - b) <= (1e-8 * b) + 1e-14;
}
