using ScreenStats.Statistics.Monitoring.Lots;

namespace ScreenStats.Statistics.Tests.Monitoring.Lots;

public sealed class BetaBinomialTests
{
    private static readonly Gen<LotTally[]> Lots = Gen.Select(Gen.Long[0, 3000], Gen.Double[0, 1]).Select((trials, part) => new LotTally((long)(part * part * part * trials), trials)).Array[2, 30];

    [Fact]
    public void Every_row_of_the_reference_table_is_met() => Mismatches.ShouldBeNone([.. ReferenceTable.Load("beta-binomial"), .. ReferenceTable.Load("beta-binomial-roots")], row =>
    {
        var fit = BetaBinomial.MaximumLikelihood(Read(row));
        return
        [
            row.Mismatch("alpha", fit.Rates?.Alpha), row.Mismatch("beta", fit.Rates?.Beta), row.Mismatch("mean", fit.Mean), row.Mismatch("correlation", fit.Correlation),
            row.Mismatch("log_likelihood", fit.LogLikelihood),
        ];
    });

    [Fact]
    public void Every_row_of_the_table_of_posteriors_is_met() => Mismatches.ShouldBeNone(ReferenceTable.Load("lot-posteriors"), row =>
    {
        var lots = Read(row);
        var posterior = EmpiricalBayes.Of(lots, BetaBinomial.MaximumLikelihood(lots), row.Number("factor"))[(int)row.Count("lot")];
        return [row.Mismatch("mean", posterior.Rate.Value), row.Mismatch("lower", posterior.Rate.Lower), row.Mismatch("upper", posterior.Rate.Upper), row.Mismatch("above", posterior.ChanceAbove)];
    });

    [Fact]
    public void Both_tables_have_at_least_fifty_independent_rows()
    {
        foreach (var name in new[] { "beta-binomial", "lot-posteriors" })
            ReferenceTable.Load(name).Count(row => row.Kind == "independent").Should().BeGreaterThanOrEqualTo(50, name);
    }

    // Gelman et al., Bayesian Data Analysis, section 5.1: the historical rat tumours give (1.4, 8.6), and 4 of 14 then 0.223 (from memory); more
    // digits computed apart with R 4.2.2.
    [Fact]
    public void The_moments_of_seventy_rat_experiments_are_the_published_ones()
    {
        var all = Read(ReferenceTable.Load("beta-binomial").Single(row => row.Id == "rat-tumours-71"));
        var fit = BetaBinomial.Moments(all[..70]);
        fit.Rates!.Value.Alpha.Should().BeApproximately(1.356149391, 5e-10);
        fit.Rates!.Value.Beta.Should().BeApproximately(8.615057891, 5e-10);
        fit.Mean.Should().BeApproximately(0.1360065389, 5e-11);
        Math.Sqrt(fit.Mean!.Value * (1 - fit.Mean.Value) * fit.Correlation!.Value).Should().BeApproximately(0.1034922698, 5e-11);
        EmpiricalBayes.Of([all[70]], fit)[0].Rate.Value.Should().BeApproximately(0.2234409526, 5e-11);
    }

    [Fact]
    public void No_distribution_near_the_fit_is_more_likely_and_labels_do_not_matter() => Lots.Sample(lots =>
    {
        var fit = BetaBinomial.MaximumLikelihood(lots);
        var turned = BetaBinomial.MaximumLikelihood([.. lots.Reverse(), new LotTally(0, 0)]);
        if (fit.Rates is not { } rates) return fit.Reason == turned.Reason;
        var mirror = BetaBinomial.MaximumLikelihood([.. lots.Select(lot => new LotTally(lot.Trials - lot.Events, lot.Trials))]).Rates!.Value;
        double Log(double a, double b) => lots.Sum(lot =>
            Sum(a, lot.Events) + Sum(b, lot.Trials - lot.Events) - Sum(a + b, lot.Trials) + Sum(lot.Trials - lot.Events + 1, lot.Events) - Sum(1, lot.Events));
        var best = Log(rates.Alpha, rates.Beta);
        return Math.Abs(best - fit.LogLikelihood!.Value) < 1e-6 && Log(rates.Alpha * 1.01, rates.Beta) <= best + 1e-9 && Log(rates.Alpha, rates.Beta * 0.99) <= best + 1e-9
            && Log(rates.Alpha * 0.98, rates.Beta * 0.98) <= best + 1e-9 && Math.Abs(turned.Rates!.Value.Alpha - rates.Alpha) < 1e-7 * rates.Alpha
            && Math.Abs(mirror.Beta - rates.Alpha) < 1e-6 * rates.Alpha;
    }, iter: 40);

    [Fact]
    public void A_posterior_lies_between_the_lots_own_rate_and_the_mean_of_all() => Lots.Sample(lots =>
    {
        var fit = BetaBinomial.MaximumLikelihood(lots);
        var posteriors = EmpiricalBayes.Of(lots, fit);
        if (fit.Rates is null) return posteriors.All(posterior => posterior.Rate.Reason == fit.Reason && posterior.ChanceAbove is null);
        return posteriors.All(posterior =>
        {
            var own = posterior.Lot.Trials == 0 ? fit.Mean!.Value : (double)posterior.Lot.Events / posterior.Lot.Trials;
            return posterior.Rate.Value >= Math.Min(own, fit.Mean!.Value) - 1e-12 && posterior.Rate.Value <= Math.Max(own, fit.Mean!.Value) + 1e-12
                && posterior.ChanceAbove is >= 0 and <= 1 && posterior.Rate.Lower >= 0 && posterior.Rate.Upper <= 1;
        });
    }, iter: 40);

    [Fact]
    public void A_bad_lot_stands_out_and_a_good_one_with_few_tests_does_not()
    {
        LotTally[] lots = [new(5, 10_000), new(7, 12_000), new(3, 8_000), new(60, 9_000), new(0, 15), new(1, 40), new(8, 11_000), new(2, 7_000)];
        var posteriors = EmpiricalBayes.Of(lots, BetaBinomial.MaximumLikelihood(lots));
        posteriors[3].ChanceAbove.Should().BeGreaterThan(0.99);
        posteriors.Where((_, i) => i != 3).Should().OnlyContain(posterior => posterior.ChanceAbove < 0.6);
    }

    [Fact]
    public void What_cannot_be_fitted_says_why()
    {
        foreach (var (lots, reason) in new (LotTally[], UndefinedReason)[]
        {
            ([], UndefinedReason.NoTrials), ([new(0, 0)], UndefinedReason.NoTrials), ([new(0, 100), new(0, 900)], UndefinedReason.NoEvents), ([new(5, 5), new(2, 2)], UndefinedReason.OnlyEvents),
            ([new(3, 90), new(0, 0)], UndefinedReason.FewerThanTwoLots), ([new(0, 7), new(6, 6)], UndefinedReason.LotsAllOrNothing), ([new(5, 100), new(5, 100)], UndefinedReason.LotsAllAlike),
            ([new(1, 1), new(0, 1)], UndefinedReason.OneTrialInEachCluster), ([new(10, 100_000), new(11, 100_000), new(9, 100_000)], UndefinedReason.LotsAllAlike),
        })
        {
            var fit = BetaBinomial.MaximumLikelihood(lots);
            fit.Reason.Should().Be(reason);
            fit.Rates.Should().BeNull();
            EmpiricalBayes.Of(lots, fit).All(posterior => posterior.Rate.Reason == reason).Should().BeTrue();
            BetaBinomial.Moments(lots).Rates.HasValue.Should().Be(BetaBinomial.Moments(lots).Reason is null);
        }

        BetaBinomial.MaximumLikelihood([new(5, 100), new(5, 100)]).Correlation.Should().Be(0);
        BetaBinomial.MaximumLikelihood([new(5, 100), new(5, 100)]).Mean.Should().Be(0.05);
    }

    [Fact]
    public void Figures_outside_their_domain_are_refused_by_name()
    {
        var fit = BetaBinomial.MaximumLikelihood([]);
        FluentActions.Invoking(() => new LotTally(2, 1)).Should().Throw<ArgumentOutOfRangeException>().WithParameterName("events");
        FluentActions.Invoking(() => new LotTally(0, -1)).Should().Throw<ArgumentOutOfRangeException>().WithParameterName("trials");
        FluentActions.Invoking(() => EmpiricalBayes.Of([], fit, 0)).Should().Throw<ArgumentOutOfRangeException>().WithParameterName("factor");
        FluentActions.Invoking(() => EmpiricalBayes.Of([], fit, 2, 1)).Should().Throw<ArgumentOutOfRangeException>().WithParameterName("confidence");
    }

    private static double Sum(double start, long count)
    {
        double sum = 0;
        for (long j = 0; j < count; j++) sum += Math.Log(start + j);
        return sum;
    }

    private static LotTally[] Read(ReferenceRow row)
    {
        var trials = row.Numbers("trials");
        return [.. row.Numbers("events").Select((events, i) => new LotTally((long)events, (long)trials[i]))];
    }
}
