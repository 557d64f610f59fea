using ScreenStats.Statistics.Regression.Rates;

namespace ScreenStats.Statistics.Tests.Regression.Rates;

public sealed class PoissonRegressionTests
{
    private static readonly Gen<RateRow[]> Drawn = Gen.Select(Gen.Int[3, 12], Gen.Int[1, 60].Array[12], Gen.Double[0.5, 900].Array[12], Gen.Double[-2, 2].Array[12])
        .Select((count, events, exposures, terms) => (RateRow[])[.. Enumerable.Range(0, count).Select(i => new RateRow(events[i], exposures[i], [terms[i]], i % 4))]);

    [Fact]
    public void Every_row_of_the_reference_table_is_met() => Mismatches.ShouldBeNone(
        ReferenceTable.Load("poisson-rates"), row => RateRows.Mismatches(row, PoissonRegression.Fit(RateRows.Poisson(row.Text("rows")), RateRows.Options(row))));

    [Fact]
    public void The_table_has_at_least_fifty_independent_rows() =>
        ReferenceTable.Load("poisson-rates").Count(row => row.Kind == "independent").Should().BeGreaterThanOrEqualTo(50);

    [Fact]
    public void With_a_constant_alone_the_rate_is_all_events_over_all_exposure() => Drawn.Sample(rows =>
    {
        var fit = PoissonRegression.Fit([.. rows.Select(row => new RateRow(row.Events, row.Exposure, []))]);
        var events = rows.Sum(row => row.Events);
        fit.Fitted[0].Should().BeApproximately(events / rows.Sum(row => row.Exposure), 1e-12 * fit.Fitted[0]);
        fit.StandardErrors[0].Should().BeApproximately(1 / Math.Sqrt(events), 1e-9);
        fit.Deviance!.Value.Should().BeApproximately(fit.NullDeviance!.Value, 1e-8 * (1 + fit.NullDeviance.Value));
    }, iter: 60);

    [Fact]
    public void Order_units_of_exposure_and_empty_rows_change_nothing_but_the_constant() => Drawn.Sample(rows =>
    {
        var fit = PoissonRegression.Fit(rows);
        if (fit.Reason is not null) return;
        var turned = PoissonRegression.Fit([new RateRow(0, 0, [3]), .. rows.Reverse()]);
        turned.Coefficients.Should().Equal(fit.Coefficients);
        var scaled = PoissonRegression.Fit([.. rows.Select(row => new RateRow(row.Events, row.Exposure * 1000, row.Terms, row.Group))]);
        RegressionRows.Close(scaled.Coefficients[1], fit.Coefficients[1], 1e-9).Should().BeTrue();
        RegressionRows.Close(scaled.Coefficients[0], fit.Coefficients[0] - Math.Log(1000), 1e-9).Should().BeTrue();
        rows.Select((row, i) => row.Events - (row.Exposure * fit.Fitted[i])).Sum().Should().BeApproximately(0, 1e-7);
    }, iter: 60);

    [Fact]
    public void Counts_over_a_design_effect_keep_the_coefficients_and_widen_the_errors_by_its_root() => Drawn.Sample(rows =>
    {
        var (fit, deflated) = (PoissonRegression.Fit(rows), PoissonRegression.Fit([.. rows.Select(row => new RateRow(row.Events / 2.5, row.Exposure / 2.5, row.Terms))]));
        if (fit.Reason is not null) return;
        RegressionRows.Close(fit.Coefficients, deflated.Coefficients, 1e-9).Should().BeTrue();
        RegressionRows.Close(deflated.StandardErrors[1], fit.StandardErrors[1] * Math.Sqrt(2.5), 1e-9).Should().BeTrue();
    }, iter: 60);

    [Fact]
    public void A_level_without_events_is_named_and_nothing_is_fitted()
    {
        var fit = PoissonRegression.Fit([new(3, 10, [0]), new(5, 12, [0]), new(0, 9, [1])]);
        fit.Reason.Should().Be(UndefinedReason.Separation);
        fit.UnboundedTerms.Should().Equal(1);
        fit.Akaike.Should().BeNull();
        PoissonRegression.Fit([new(3, 10, [0]), new(0, 12, [0]), new(0, 9, [1]), new(1, 4, [1])]).Reason.Should().BeNull();

        // Events so rare that a row expects next to none are no separation.
        PoissonRegression.Fit([new(1, 1e9, [0]), new(0, 1, [1]), new(1, 2e9, [1])]).Fitted[0].Should().BeApproximately(1e-9, 1e-18);
    }

    [Fact]
    public void Large_and_small_counts_side_by_side_are_fitted()
    {
        var fit = PoissonRegression.Fit([new(0, 1, [0]), new(2_000_000, 1, [1]), new(1, 1, [0])]);
        fit.Reason.Should().BeNull();
        fit.Coefficients[1].Should().BeApproximately(Math.Log(2_000_000 / 0.5), 1e-10);
    }

    [Fact]
    public void What_cannot_be_fitted_says_why()
    {
        PoissonRegression.Fit([]).Reason.Should().Be(UndefinedReason.NoExposure);
        PoissonRegression.Fit([new(0, 0, [1])]).Reason.Should().Be(UndefinedReason.NoExposure);
        PoissonRegression.Fit([new(0, 4, [1])]).Reason.Should().Be(UndefinedReason.NoEvents);
        PoissonRegression.Fit([new(1, 4, [1]), new(2, 4, [1])]).Reason.Should().Be(UndefinedReason.CollinearTerms);
        PoissonRegression.Fit([new(1, 4, [])], new RateOptions { Constant = false }).Reason.Should().Be(UndefinedReason.NoValues);
        PoissonRegression.Fit([new(1, 4, [])], new RateOptions { Covariance = RateCovariance.Quasi }).Reason.Should().Be(UndefinedReason.NoDegreesOfFreedom);
        PoissonRegression.Fit([new(1, 4, []), new(2, 4, [])], new RateOptions { Covariance = RateCovariance.ClusterRobust }).Reason.Should().Be(UndefinedReason.FewerThanTwoClusters);
        FluentActions.Invoking(() => PoissonRegression.Fit([new(1, 5, []), new(2, 5, [1])])).Should().Throw<ArgumentException>();
        FluentActions.Invoking(() => PoissonRegression.Fit([], new RateOptions { Confidence = 1 })).Should().Throw<ArgumentOutOfRangeException>();
        FluentActions.Invoking(() => new RateRow(1, 0, [])).Should().Throw<ArgumentOutOfRangeException>();
        FluentActions.Invoking(() => new RateRow(-1, 2, [])).Should().Throw<ArgumentOutOfRangeException>();
        FluentActions.Invoking(() => new RateRow(1, double.PositiveInfinity, [])).Should().Throw<ArgumentOutOfRangeException>();
    }
}
