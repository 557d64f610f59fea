using ScreenStats.Statistics.Regression;
using ScreenStats.Statistics.Tests.Heterogeneity;

namespace ScreenStats.Statistics.Tests.Regression;

public sealed class LogisticRegressionTests
{
    private static readonly Dictionary<string, CovarianceKind> Kinds = new()
    {
        ["binomial"] = CovarianceKind.Binomial, ["quasi-binomial"] = CovarianceKind.QuasiBinomial, ["cluster-robust"] = CovarianceKind.ClusterRobust,
    };

    [Fact]
    public void Every_row_of_the_reference_table_is_met() => Mismatches.ShouldBeNone(ReferenceTable.Load("logistic"), row =>
    {
        var fit = LogisticRegression.Fit(RegressionRows.Read(row), new LogisticOptions { Constant = row.Text("constant") == "TRUE", Covariance = Kinds[row.Text("covariance")] });
        return
        [
            .. GroupRows.Mismatches(row, "coefficients", fit.Coefficients.Select(b => (double?)b)), .. GroupRows.Mismatches(row, "standard_errors", fit.StandardErrors.Select(b => (double?)b)),
            row.Mismatch("deviance", fit.Deviance), row.Mismatch("pearson", fit.Pearson), row.Mismatch("log_likelihood", fit.LogLikelihood), row.Mismatch("degrees_of_freedom", fit.DegreesOfFreedom),
        ];
    });

    [Fact]
    public void The_table_has_at_least_twenty_independent_rows_of_each_covariance()
    {
        foreach (var kind in Kinds.Keys) ReferenceTable.Load("logistic").Count(row => row.Kind == "independent" && row.Text("covariance") == kind).Should().BeGreaterThanOrEqualTo(20, kind);
    }

    /// <summary>Twelve weeks of our own, computed apart with R 4.2.2 glm.</summary>
    [Fact]
    public void Null_deviance_and_criterion_are_those_of_twelve_weeks()
    {
        var weeks = RegressionRows.Read(ReferenceTable.Load("logistic").Single(row => row.Id == "weeks"));
        var fit = LogisticRegression.Fit(weeks);
        fit.NullDeviance!.Value.Should().BeApproximately(13.16686421, 5e-9);
        fit.Akaike!.Value.Should().BeApproximately(56.44192002, 5e-9);
        var square = LogisticRegression.Fit(RegressionRows.Read(ReferenceTable.Load("logistic").Single(row => row.Id == "weeks-square")));
        (fit.Deviance!.Value - square.Deviance!.Value).Should().BeApproximately(7.4916831, 5e-8);
        LogisticRegression.Fit([]).Akaike.Should().BeNull();
    }

    // Alcohol and malformations (Graubard, Korn 1987; Agresti), computed apart with R 4.2.2 glm.
    [Fact]
    public void The_logit_slope_of_malformations_over_alcohol_and_its_likelihood_ratio_are_the_known_ones()
    {
        BinomialRow[] rows = [new(48, 17114, [0]), new(38, 14502, [0.5]), new(5, 793, [1.5]), new(1, 127, [4]), new(1, 38, [7])];
        var fit = LogisticRegression.Fit(rows);
        fit.Coefficients[1].Should().BeApproximately(0.316560393, 5e-10);
        fit.StandardErrors[1].Should().BeApproximately(0.125446215, 1e-6, "R's errors belong to the step before the last");
        var none = LogisticRegression.Fit([.. rows.Select(row => new BinomialRow(row.Events, row.Trials, []))]);
        (none.Deviance!.Value - fit.Deviance!.Value).Should().BeApproximately(4.253276888, 5e-10);
        none.Deviance.Value.Should().BeApproximately(6.201997907, 5e-10);
    }

    [Fact]
    public void Counts_divided_by_a_design_effect_widen_the_limits_by_its_root_and_move_nothing() => RegressionRows.Drawn.Sample(rows =>
    {
        var fit = LogisticRegression.Fit(rows);
        var divided = LogisticRegression.Fit([.. rows.Select(row => new BinomialRow(row.Events / 3, row.Trials / 3, row.Terms, row.Group))]);
        divided.Reason.Should().Be(fit.Reason);
        if (fit.Reason is not null) return;
        RegressionRows.Close(fit.Coefficients, divided.Coefficients, 1e-7).Should().BeTrue();
        RegressionRows.Close([.. fit.StandardErrors.Select(error => error * Math.Sqrt(3))], divided.StandardErrors, 1e-7).Should().BeTrue();
    }, iter: 40);

    [Fact]
    public void A_site_with_no_positives_is_named_and_nothing_is_fitted()
    {
        var (names, terms) = Levels.Terms(["a", "a", "b", "b", "c", "c"]);
        names.Should().Equal("b", "c");
        BinomialRow[] rows = [.. terms.Select((term, i) => new BinomialRow(i is 2 or 3 ? 0 : 3 + i, 100 + i, term, i / 2))];
        var fit = LogisticRegression.Fit(rows);
        fit.Reason.Should().Be(UndefinedReason.Separation);
        fit.Separation.Should().Be(SeparationKind.Partial);
        fit.UnboundedTerms.Should().Equal(1);
        fit.Coefficients.Should().BeEmpty();
    }

    [Fact]
    public void Complete_separation_is_found_and_said()
    {
        var fit = LogisticRegression.Fit([new(0, 1, [1]), new(0, 1, [2]), new(0, 1, [3]), new(1, 1, [4]), new(1, 1, [5])]);
        fit.Separation.Should().Be(SeparationKind.Complete);
        fit.UnboundedTerms.Should().Equal(0, 1);

        // One row on the wrong side and there is a fit.
        LogisticRegression.Fit([new(0, 1, [1]), new(1, 1, [2]), new(0, 1, [3]), new(1, 1, [4]), new(1, 1, [5])]).Reason.Should().BeNull();
    }

    [Fact]
    public void Rows_without_events_that_do_not_separate_are_fitted()
    {
        var fit = LogisticRegression.Fit([new(0, 50, [0]), new(2, 60, [0]), new(0, 30, [1]), new(5, 40, [1])]);
        fit.Reason.Should().BeNull();
        fit.Fitted[0].Should().BeApproximately(2 / 110.0, 1e-12);
        fit.Fitted[3].Should().BeApproximately(5 / 70.0, 1e-12);
    }

    [Fact]
    public void Very_small_rates_are_not_taken_for_separation()
    {
        var fit = LogisticRegression.Fit([new(1, 20_000_000, [0]), new(0, 40, [1]), new(9, 30_000_000, [1])]);
        fit.Reason.Should().BeNull();
        fit.Fitted[0].Should().BeApproximately(5e-8, 1e-18);
    }

    [Fact]
    public void Order_of_rows_and_their_splitting_change_nothing_and_the_scores_are_zero() => RegressionRows.Drawn.Sample(rows =>
    {
        var fit = LogisticRegression.Fit(rows);
        var turned = LogisticRegression.Fit([.. rows.Reverse(), new BinomialRow(0, 0, rows[0].Terms)]);
        (turned.Reason == fit.Reason && turned.Separation == fit.Separation && turned.Coefficients.SequenceEqual(fit.Coefficients)).Should().BeTrue();
        if (fit.Reason is not null) return;
        var split = LogisticRegression.Fit([.. rows.SelectMany(row => new[]
        {
            new BinomialRow(row.Events / 2, row.Trials / 2, row.Terms), new BinomialRow(row.Events - (row.Events / 2), row.Trials - (row.Trials / 2), row.Terms),
        })]);
        RegressionRows.Close(fit.Coefficients, split.Coefficients, 1e-8).Should().BeTrue();
        RegressionRows.Close(fit.StandardErrors, split.StandardErrors, 1e-8).Should().BeTrue();
        var residual = rows.Select((row, i) => row.Events - (row.Trials * fit.Fitted[i])).ToArray();
        Math.Abs(residual.Sum()).Should().BeLessThan(1e-6);
    }, iter: 80);

    [Fact]
    public void Separation_is_said_exactly_where_a_level_has_no_event_or_nothing_else() => Gen.Select(Gen.Int[0, 3].Array[4], Gen.Int[3, 6].Array[4]).Sample((events, trials) =>
    {
        var (_, terms) = Levels.Terms(["a", "b", "c", "d"]);
        var fit = LogisticRegression.Fit([.. events.Select((x, i) => new BinomialRow(x, trials[i], terms[i]))]);
        if (fit.Reason is UndefinedReason.NoEvents or UndefinedReason.OnlyEvents) return;
        (fit.Separation != SeparationKind.None).Should().Be(events.Zip(trials).Any(pair => pair.First == 0 || pair.First == pair.Second));
    }, iter: 150);

    [Fact]
    public void What_cannot_be_fitted_says_why()
    {
        LogisticRegression.Fit([]).Reason.Should().Be(UndefinedReason.NoTrials);
        LogisticRegression.Fit([new(0, 5, [1])]).Reason.Should().Be(UndefinedReason.NoEvents);
        LogisticRegression.Fit([new(5, 5, [1])]).Reason.Should().Be(UndefinedReason.OnlyEvents);
        LogisticRegression.Fit([new(1, 5, [1]), new(2, 5, [1])]).Reason.Should().Be(UndefinedReason.CollinearTerms);
        LogisticRegression.Fit([new(1, 5, [1, 2]), new(2, 5, [2, 4]), new(2, 7, [3, 6])]).Reason.Should().Be(UndefinedReason.CollinearTerms);
        LogisticRegression.Fit([new(1, 5, [])], new LogisticOptions { Covariance = CovarianceKind.QuasiBinomial }).Reason.Should().Be(UndefinedReason.NoDegreesOfFreedom);
        LogisticRegression.Fit([new(1, 5, []), new(2, 5, [])], new LogisticOptions { Covariance = CovarianceKind.ClusterRobust }).Reason.Should().Be(UndefinedReason.FewerThanTwoClusters);
        FluentActions.Invoking(() => LogisticRegression.Fit([new(1, 5, []), new(2, 5, [1])])).Should().Throw<ArgumentException>();
        FluentActions.Invoking(() => new BinomialRow(1, 5, [double.NaN])).Should().Throw<ArgumentOutOfRangeException>();
        FluentActions.Invoking(() => new BinomialRow(6, 5, [])).Should().Throw<ArgumentOutOfRangeException>();
        FluentActions.Invoking(() => Levels.Terms(["a"], "b")).Should().Throw<ArgumentException>();
    }
}
