using ScreenStats.Statistics.Comparison;
using ScreenStats.Statistics.Monitoring.Lots;

namespace ScreenStats.Statistics.Tests.Monitoring.Lots;

public sealed class StratifiedExactTestTests
{
    [Fact]
    public void Every_row_of_the_reference_table_is_met() => Mismatches.ShouldBeNone(ReferenceTable.Load("stratified-exact"), row =>
    {
        var test = row.Text("model") == "binomial" ? StratifiedExactTest.Binomial(Strata.ReadShared(row)) : StratifiedExactTest.Hypergeometric(Strata.ReadWhole(row));
        return
        [
            row.Mismatch("observed", test.Observed), row.Mismatch("strata_used", test.InformativeStrata), row.Mismatch("events_used", test.InformativeEvents),
            row.Mismatch("expected", test.Expected), row.Mismatch("variance", test.Variance), row.Mismatch("upper", test.AtLeastAsMany),
            row.Mismatch("lower", test.AtMostAsMany), row.Mismatch("two_sided", test.TwoSided), row.Mismatch("log_upper", test.LogAtLeastAsMany),
            row.Mismatch("log_lower", test.LogAtMostAsMany),
        ];
    });

    /// <summary>mpmath 1.3.0 at 60 digits: the hypergeometric tail summed, its normal score solved for, the tail of the score over the square root.</summary>
    [Theory]
    [InlineData(6, 100, 8, 1000, 2, 0.0018683632627610554)]
    [InlineData(20, 200, 31, 2000, 1.5, 1.1664368930114715e-9)]
    [InlineData(12, 500, 40, 5000, 4, 0.045295282790954935)]
    [InlineData(60, 400, 75, 4000, 9, 7.0134008276079577e-7)]
    [InlineData(300, 3000, 320, 60000, 2, 2.0846467677179341e-184)]
    public void The_widened_chance_is_that_of_the_score_over_the_square_root(long events, long trials, long all, long allTrials, double overdispersion, double expected)
    {
        var test = StratifiedExactTest.Hypergeometric([new LotStratum(events, trials, all, allTrials)]);

        test.AtLeastAsManyWidened(overdispersion).Should().BeApproximately(expected, 1e-7 * expected);
        test.AtLeastAsManyWidened(1).Should().Be(test.AtLeastAsMany);
        FluentActions.Invoking(() => test.AtLeastAsManyWidened(0.9)).Should().Throw<ArgumentOutOfRangeException>();
    }

    [Fact]
    public void Each_model_has_at_least_forty_independent_rows() => ReferenceTable.Load("stratified-exact").Where(row => row.Kind == "independent").GroupBy(row => row.Text("model"))
        .Should().HaveCount(2).And.OnlyContain(group => group.Count() >= 40);

    [Fact]
    public void With_one_stratum_it_is_the_hypergeometric_tail_and_Fishers_test() => Strata.Whole.Where(all => all.Length > 0).Sample(all =>
    {
        var s = all[0];
        var test = StratifiedExactTest.Hypergeometric([s]);
        return Near(test.AtLeastAsMany, Hypergeometric.UpperTail(s.LotEvents, s.Trials, s.Events, s.LotTrials), 1e-11)
            && Near(test.AtMostAsMany, Hypergeometric.LowerTail(s.LotEvents, s.Trials, s.Events, s.LotTrials), 1e-11)
            && Near(test.TwoSided, FisherExact.TwoSided(s.LotEvents, s.LotTrials, s.Events - s.LotEvents, s.Trials - s.LotTrials), 1e-10);
    });

    [Fact]
    public void Tails_share_only_the_observed_number_and_neither_order_nor_empty_strata_matter() => Strata.Whole.Sample(all =>
    {
        var test = StratifiedExactTest.Hypergeometric(all);
        var turned = StratifiedExactTest.Hypergeometric([new LotStratum(0, 0, 4, 9), .. all.Reverse(), new LotStratum(0, 3, 0, 9)]);
        return test.AtLeastAsMany + test.AtMostAsMany >= 1 - 1e-12 && test.TwoSided <= 1 && test.TwoSided >= Math.Min(test.AtLeastAsMany, test.AtMostAsMany) - 1e-12
            && Near(test.AtLeastAsMany, turned.AtLeastAsMany, 1e-11) && Near(test.TwoSided, turned.TwoSided, 1e-6) && test.Observed == turned.Observed;
    });

    [Fact]
    public void The_other_lots_see_the_mirror_image() => Strata.Shared.Sample(all =>
    {
        var test = StratifiedExactTest.Binomial(all);
        var others = StratifiedExactTest.Binomial([.. all.Select(s => new SharedStratum(s.Events - s.LotEvents, s.Events, 1 - s.Share))]);
        return Near(test.AtLeastAsMany, others.AtMostAsMany, 1e-9) && Near(test.TwoSided, others.TwoSided, 1e-6) && Near(test.Variance, others.Variance, 1e-9)
            && test.InformativeEvents - test.Observed == others.Observed;
    });

    [Fact]
    public void Strata_that_share_a_share_may_be_merged() => Gen.Select(Strata.Shared, Gen.Double[0.01, 0.99]).Sample((all, share) =>
    {
        var test = StratifiedExactTest.Binomial([.. all.Select(s => new SharedStratum(s.LotEvents, s.Events, share))]);
        var merged = StratifiedExactTest.Binomial([new SharedStratum(all.Sum(s => s.LotEvents), all.Sum(s => s.Events), share)]);
        return Near(test.AtLeastAsMany, merged.AtLeastAsMany, 1e-10) && Near(test.AtMostAsMany, merged.AtMostAsMany, 1e-10);
    });

    [Fact]
    public void For_rare_events_whole_trials_and_shares_agree()
    {
        var whole = Enumerable.Range(1, 50).Select(i => new LotStratum(i % 7 == 0 ? 1 : 0, 20_000 * i, 1 + (i % 3), 100_000 * i)).ToArray();
        var test = StratifiedExactTest.Hypergeometric(whole);
        var shared = StratifiedExactTest.Binomial([.. whole.Select(s => SharedStratum.FromWeights(s.LotEvents, s.Events, s.LotTrials * 0.7, s.Trials * 0.7))]);
        shared.AtMostAsMany.Should().BeApproximately(test.AtMostAsMany, 1e-4 * test.AtMostAsMany);
        shared.Expected.Should().BeApproximately(test.Expected, 1e-9);
    }

    [Fact]
    public void Thousands_of_site_weeks_are_one_convolution()
    {
        var strata = Enumerable.Range(0, 5200).Select(i => new LotStratum(i % 40 == 1 ? 1 : 0, 10 + (i % 50), i % 5, 200 + (i % 300))).ToArray();
        var test = StratifiedExactTest.Hypergeometric(strata);
        test.InformativeStrata.Should().Be(4160);
        var z = (test.Observed - test.Expected) / Math.Sqrt(test.Variance);
        z.Should().BeLessThan(-10);
        test.LogAtMostAsMany.Should().BeInRange(-0.9 * z * z, -0.5 * z * z);
    }

    [Fact]
    public void Without_an_informative_stratum_every_tail_is_one_and_says_why()
    {
        foreach (var test in new[] { StratifiedExactTest.Hypergeometric([]), StratifiedExactTest.Hypergeometric([new LotStratum(3, 3, 3, 3), new LotStratum(0, 0, 1, 5)]), StratifiedExactTest.Binomial([new SharedStratum(2, 2, 1)]) })
        {
            (test.AtLeastAsMany, test.AtMostAsMany, test.TwoSided, test.LogAtLeastAsMany).Should().Be((1, 1, 1, 0));
            test.Reason.Should().Be(UndefinedReason.NoInformativeStratum);
        }
    }

    [Fact]
    public void Counts_that_cannot_be_are_refused_by_name()
    {
        foreach (var (call, name) in new (Action, string)[]
        {
            (() => _ = new LotStratum(1, 0, 1, 5), "lotEvents"), (() => _ = new LotStratum(0, 6, 0, 5), "lotTrials"), (() => _ = new LotStratum(2, 3, 1, 5), "events"),
            (() => _ = new LotStratum(0, 3, 3, 5), "events"), (() => _ = new SharedStratum(1, 1, double.NaN), "share"), (() => _ = new SharedStratum(1, 1, 0), "lotEvents"),
            (() => _ = new SharedStratum(0, 1, 1), "lotEvents"), (() => _ = SharedStratum.FromWeights(0, 1, 2, 1), "lotWeight"), (() => _ = SharedStratum.FromWeights(0, 1, 0, 0), "weight"),
        })
        {
            call.Should().Throw<ArgumentOutOfRangeException>().WithParameterName(name);
        }
    }

    private static bool Near(double one, double other, double relative) => Math.Abs(one - other) <= (relative * Math.Abs(other)) + 1e-14;
}
