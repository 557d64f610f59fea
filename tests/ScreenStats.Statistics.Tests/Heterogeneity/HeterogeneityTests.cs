using ScreenStats.Statistics.Heterogeneity;
using ScreenStats.Statistics.Numerics;

namespace ScreenStats.Statistics.Tests.Heterogeneity;

public sealed class HeterogeneityTests
{
    private static readonly Dictionary<string, BetweenVarianceMethod> Methods = new()
    {
        ["dersimonian-laird"] = BetweenVarianceMethod.DerSimonianLaird,
        ["paule-mandel"] = BetweenVarianceMethod.PauleMandel,
        ["restricted-maximum-likelihood"] = BetweenVarianceMethod.RestrictedMaximumLikelihood,
        ["maximum-likelihood"] = BetweenVarianceMethod.MaximumLikelihood,
        ["hedges-olkin"] = BetweenVarianceMethod.HedgesOlkin,
    };

    private static readonly Gen<EffectEstimate[]> Effects = Gen.Select(Gen.Double[-3, 3], Gen.Double[0.01, 4]).Select((value, variance) => new EffectEstimate(value, variance)).Array[2, 15];

    /// <summary>Two to five groups of up to 3,000 trials with at most 35 events together: all their tables can be summed.</summary>
    private static readonly Gen<GroupCount[]> FewEvents = Gen.Select(Gen.Long[0, 7], Gen.Long[0, 3000]).Select((events, others) => new GroupCount(events, events + others)).Array[2, 5];

    [Fact]
    public void Every_row_of_the_table_of_homogeneity_is_met() => Mismatches.ShouldBeNone(ReferenceTable.Load("homogeneity"), row =>
    {
        var groups = GroupRows.Read(row);
        var result = HomogeneityTest.ChiSquare(groups);
        return
        [
            row.Mismatch("statistic", result.Statistic), row.Mismatch("likelihood_ratio", result.LikelihoodRatio), row.Mismatch("p_value", result.PValue),
            row.Mismatch("degrees_of_freedom", result.DegreesOfFreedom), row.Has("exact_p") ? row.Mismatch("exact_p", ExactHomogeneity.Test(groups).PValue) : null,
        ];
    });

    [Fact]
    public void Every_row_of_the_table_of_simultaneous_pairs_is_met() => Mismatches.ShouldBeNone(ReferenceTable.Load("marascuilo"), row =>
    {
        var pair = PairwiseComparison.Marascuilo(GroupRows.Read(row), row.Number("confidence")).Single(pair => pair.First == row.Count("first") && pair.Second == row.Count("second"));
        // The printed differences are without sign.
        return [row.Mismatch("difference", row.Kind == "published" || row.Id.StartsWith("nist", StringComparison.Ordinal) ? Math.Abs(pair.Difference) : pair.Difference), row.Mismatch("critical_range", pair.CriticalRange)];
    });

    [Fact]
    public void Every_row_of_the_table_of_pairs_is_met() => Mismatches.ShouldBeNone(ReferenceTable.Load("pair-differences"), row =>
    {
        var pair = PairwiseComparison.Newcombe(GroupRows.Read(row), row.Number("confidence")).Single(pair => pair.First == row.Count("first") && pair.Second == row.Count("second"));
        return
        [
            row.Mismatch("lower", pair.Difference.Lower), row.Mismatch("upper", pair.Difference.Upper), row.Mismatch("simultaneous_lower", pair.Simultaneous.Lower),
            row.Mismatch("simultaneous_upper", pair.Simultaneous.Upper), row.Mismatch("p_value", pair.PValue), row.Mismatch("adjusted", pair.AdjustedPValue),
        ];
    });

    [Fact]
    public void Every_row_of_the_table_of_random_effects_is_met() => Mismatches.ShouldBeNone(ReferenceTable.Load("random-effects"), row =>
    {
        EffectEstimate[] effects = [.. row.Numbers("values").Zip(row.Numbers("variances"), (value, variance) => new EffectEstimate(value, variance))];
        var result = RandomEffects.Of(effects, Methods[row.Text("method")], row.Number("confidence"));
        return
        [
            row.Mismatch("common", result.Common.Value), row.Mismatch("q", result.Q), row.Mismatch("i_squared_from_q", result.ISquaredFromQ), row.Mismatch("h_squared", result.HSquared),
            row.Mismatch("common_error", result.Common.Interval!.Value.Width / 2 / Quantile.Normal(row.Number("confidence"))),
            row.Mismatch("between_variance", result.BetweenVariance), row.Mismatch("between_lower", result.BetweenVarianceLimits?.Lower), row.Mismatch("between_upper", result.BetweenVarianceLimits?.Upper),
            row.Mismatch("i_squared", result.ISquared), row.Mismatch("mean", result.Mean.Value), row.Mismatch("standard_error", result.StandardError), row.Mismatch("lower", result.Mean.Lower),
            row.Mismatch("upper", result.Mean.Upper), row.Mismatch("hartung_knapp_error", result.HartungKnappStandardError), row.Mismatch("prediction_lower", result.Prediction.Lower),
            row.Mismatch("prediction_upper", result.Prediction.Upper),
        ];
    });

    [Fact]
    public void Thirty_random_data_sets_for_each_method_agree_with_metafor()
    {
        var rows = ReferenceTable.Load("random-effects-methods");
        foreach (var method in Methods.Keys) rows.Count(row => row.Text("method") == method).Should().BeGreaterThanOrEqualTo(30, method);
        Mismatches.ShouldBeNone(rows, row =>
        {
            EffectEstimate[] effects = [.. row.Numbers("values").Zip(row.Numbers("variances"), (value, variance) => new EffectEstimate(value, variance))];
            var result = RandomEffects.Of(effects, Methods[row.Text("method")], row.Number("confidence"));
            return [row.Mismatch("between_variance", result.BetweenVariance), row.Mismatch("mean", result.Mean.Value), row.Mismatch("standard_error", result.StandardError)];
        });
    }

    [Fact]
    public void Each_table_has_at_least_fifty_independent_rows()
    {
        foreach (var name in new[] { "homogeneity", "marascuilo", "pair-differences", "random-effects" })
            ReferenceTable.Load(name).Count(row => row.Kind == "independent").Should().BeGreaterThanOrEqualTo(50, name);
        foreach (var method in Methods.Keys) ReferenceTable.Load("random-effects").Count(row => row.Text("method") == method).Should().BeGreaterThanOrEqualTo(10, method);
    }

    // NIST/SEMATECH e-Handbook, sections 7.4.6 and 7.4.7.4: the five lots differ, and no pair of them does.
    [Fact]
    public void All_groups_together_may_differ_and_no_pair()
    {
        GroupCount[] groups = [new(36, 300), new(46, 300), new(42, 300), new(63, 300), new(38, 300)];
        HomogeneityTest.ChiSquare(groups).PValue.Should().BeLessThan(0.05);
        PairwiseComparison.Marascuilo(groups).Should().HaveCount(10).And.OnlyContain(pair => !pair.Differs);
        (PairwiseComparison.Marascuilo(groups)[0].CriticalRange / Math.Sqrt(((0.12 * 0.88) + (46 / 300.0 * 254 / 300)) / 300)).Should().BeApproximately(3.08021574517, 5e-12);
    }

    [Fact]
    public void Random_tables_agree_with_the_sum_of_all_within_four_standard_errors_and_repeat_with_their_seed() => FewEvents.Sample(groups =>
    {
        var exact = ExactHomogeneity.Test(groups);
        if (exact.PValue is not { } p) return;
        var drawn = ExactHomogeneity.Test(groups, new ExactHomogeneityOptions { MostPartialTables = 0, Replicates = 4000, Seed = 7 });
        exact.Method.Should().Be(ExactHomogeneityMethod.Network);
        drawn.Method.Should().Be(ExactHomogeneityMethod.MonteCarlo);
        Math.Abs(drawn.PValue!.Value - p).Should().BeLessThan((4.5 * Math.Sqrt(p * (1 - p) / 4000)) + 1e-3);
        ExactHomogeneity.Test([.. groups.Reverse()], new ExactHomogeneityOptions { MostPartialTables = 0, Replicates = 4000, Seed = 7 }).PValue.Should().Be(drawn.PValue);
    }, iter: 12);

    [Fact]
    public void An_urn_that_keeps_its_trials_draws_the_tables_of_one_that_does_not()
    {
        long[] sizes = [40, 0, 7, 1, 300, 25];
        var (kept, looked) = (new GroupUrn(sizes, sizes.Sum()), new GroupUrn(sizes, sizes.Sum(), mostKept: 0));
        for (var replicate = 0; replicate < 200; replicate++)
        {
            var (one, other) = (new long[sizes.Length], new long[sizes.Length]);
            var (first, second) = (new Statistics.Monitoring.Scans.ReplicateStream(3, replicate), new Statistics.Monitoring.Scans.ReplicateStream(3, replicate));
            kept.Draw(ref first, 90, one);
            looked.Draw(ref second, 90, other);
            one.Should().Equal(other);
            one.Sum().Should().Be(90);
            one.Zip(sizes).Should().OnlyContain(pair => pair.First <= pair.Second);
        }
    }

    [Fact]
    public void Two_groups_give_the_p_value_of_Fishers_test() => Gen.Select(Gen.Long[0, 40], Gen.Long[0, 40], Gen.Long[1, 40], Gen.Long[1, 40]).Where((a, b, n, m) => a <= n && b <= m).Sample((a, b, n, m) =>
    {
        var exact = ExactHomogeneity.Test([new(a, n), new(b, m)]);
        if (exact.PValue is { } p) p.Should().BeApproximately(Statistics.Comparison.FisherExact.TwoSided(a, n, b, m), 1e-9);
        else exact.Reason.Should().BeOneOf(UndefinedReason.NoEvents, UndefinedReason.OnlyEvents);
    }, iter: 200);

    [Fact]
    public void Order_and_groups_without_trials_change_nothing_and_events_may_change_places() => GroupRows.Drawn.Sample(groups =>
    {
        GroupCount[] turned = [new(0, 0), .. groups.Reverse()];
        GroupCount[] mirrored = [.. groups.Select(group => new GroupCount(group.Trials - group.Events, group.Trials))];
        var result = HomogeneityTest.ChiSquare(groups);
        if (result.Reason is { } reason) return HomogeneityTest.ChiSquare(turned).Reason == reason;
        var p = result.PValue!.Value;
        return Close(p, HomogeneityTest.ChiSquare(turned).PValue) && Close(result.Statistic!.Value, HomogeneityTest.ChiSquare(mirrored).Statistic)
            && RandomEffects.OfRates(groups).BetweenVariance == RandomEffects.OfRates(turned).BetweenVariance && p is >= 0 and <= 1;
    }, iter: 100);

    [Fact]
    public void More_spread_means_a_larger_variance_and_shifts_move_the_mean_only() => Effects.Sample(effects =>
    {
        foreach (var method in Enum.GetValues<BetweenVarianceMethod>())
        {
            var result = RandomEffects.Of(effects, method);
            var moved = RandomEffects.Of([.. effects.Select(effect => new EffectEstimate(effect.Value + 2, effect.Variance))], method);
            var wider = RandomEffects.Of([.. effects.Select(effect => new EffectEstimate(effect.Value * 3, effect.Variance))], method);
            moved.BetweenVariance!.Value.Should().BeApproximately(result.BetweenVariance!.Value, 1e-6 * (1 + result.BetweenVariance.Value));
            moved.Mean.Value!.Value.Should().BeApproximately(result.Mean.Value!.Value + 2, 1e-6);
            wider.BetweenVariance!.Value.Should().BeGreaterThanOrEqualTo(result.BetweenVariance.Value - 1e-9);
            result.ISquared.Should().BeInRange(0, 1);
            if (effects.Length > 2) result.Prediction.Interval!.Value.Width.Should().BeGreaterThanOrEqualTo(result.Mean.Interval!.Value.Width - 1e-12);
        }
    }, iter: 60);

    [Fact]
    public void Paule_and_Mandel_leave_as_much_as_chance_would() => Effects.Sample(effects =>
    {
        var tau = RandomEffects.Of(effects, BetweenVarianceMethod.PauleMandel).BetweenVariance!.Value;
        if (tau == 0) return true;
        var weights = effects.Select(effect => 1 / (effect.Variance + tau)).ToArray();
        var mean = effects.Zip(weights, (effect, w) => effect.Value * w).Sum() / weights.Sum();
        return Math.Abs(effects.Zip(weights, (effect, w) => w * (effect.Value - mean) * (effect.Value - mean)).Sum() - (effects.Length - 1)) < 1e-8;
    }, iter: 100);

    [Fact]
    public void What_cannot_be_told_says_why()
    {
        HomogeneityTest.ChiSquare([]).Reason.Should().Be(UndefinedReason.NoTrials);
        HomogeneityTest.ChiSquare([new(3, 40), new(0, 0)]).Reason.Should().Be(UndefinedReason.FewerThanTwoGroups);
        HomogeneityTest.ChiSquare([new(0, 40), new(0, 7)]).Reason.Should().Be(UndefinedReason.NoEvents);
        ExactHomogeneity.Test([new(40, 40), new(7, 7)]).Reason.Should().Be(UndefinedReason.OnlyEvents);
        PairwiseComparison.Marascuilo([new(3, 40)]).Should().BeEmpty();
        PairwiseComparison.Newcombe([new(3, 40), new(0, 0)]).Should().BeEmpty();
        RandomEffects.Of([]).Mean.Reason.Should().Be(UndefinedReason.NoValues);
        var one = RandomEffects.OfRates([new(3, 40)]);
        one.Reason.Should().Be(UndefinedReason.FewerThanTwoGroups);
        one.Common.IsDefined.Should().BeTrue();
        RandomEffects.OfRates([new(3, 40), new(0, 500)]).Prediction.Reason.Should().Be(UndefinedReason.FewerThanThreeGroups);
    }

    [Fact]
    public void A_site_with_no_positives_among_two_is_compared()
    {
        var result = HomogeneityTest.ChiSquare([new(0, 100), new(5, 100)]);
        result.Statistic!.Value.Should().BeApproximately(200.0 * 500 * 500 / (100.0 * 100 * 5 * 195), 1e-12);
        result.SmallestExpected!.Value.Should().BeApproximately(2.5, 1e-12);
        ExactHomogeneity.Test([new(0, 100), new(5, 100)]).Method.Should().Be(ExactHomogeneityMethod.Network);
    }

    [Fact]
    public void Figures_outside_their_domain_are_refused()
    {
        FluentActions.Invoking(() => new GroupCount(2, 1)).Should().Throw<ArgumentOutOfRangeException>();
        FluentActions.Invoking(() => new EffectEstimate(0, 0)).Should().Throw<ArgumentOutOfRangeException>();
        FluentActions.Invoking(() => EffectEstimate.Logit(new(0, 0))).Should().Throw<ArgumentOutOfRangeException>();
        FluentActions.Invoking(() => RandomEffects.Of([new(0, 1)], (BetweenVarianceMethod)9)).Should().Throw<ArgumentOutOfRangeException>();
        FluentActions.Invoking(() => ExactHomogeneity.Test([], new ExactHomogeneityOptions { Replicates = 5 })).Should().Throw<ArgumentOutOfRangeException>();
        FluentActions.Invoking(() => PairwiseComparison.Marascuilo([], 1)).Should().Throw<ArgumentOutOfRangeException>();
    }

    private static bool Close(double expected, double? actual) => actual is { } value && Math.Abs(value - expected) <= 1e-9 * (1 + Math.Abs(expected));
}
