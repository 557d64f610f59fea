using ScreenStats.Statistics.Regression;
using ScreenStats.Statistics.Regression.Rates;

namespace ScreenStats.Statistics.Tests.Regression.Rates;

public sealed class LogBinomialRegressionTests
{
    [Fact]
    public void Every_row_of_the_reference_table_is_met() => Mismatches.ShouldBeNone(
        ReferenceTable.Load("log-binomial"), row => RateRows.Mismatches(row, LogBinomialRegression.Fit(RateRows.Binomial(row.Text("rows")), RateRows.Options(row))));

    [Fact]
    public void The_table_has_at_least_fifty_independent_rows() =>
        ReferenceTable.Load("log-binomial").Count(row => row.Kind == "independent").Should().BeGreaterThanOrEqualTo(50);

    [Fact]
    public void Two_groups_give_the_ratio_of_their_shares() => Gen.Select(Gen.Int[1, 90], Gen.Int[1, 90]).Sample((first, second) =>
    {
        var fit = LogBinomialRegression.Fit([new(first, 91, [0]), new(second, 120, [1])]);
        fit.Coefficients[1].Should().BeApproximately(Math.Log(second / 120.0 / (first / 91.0)), 1e-9);
        fit.StandardErrors[1].Should().BeApproximately(Math.Sqrt((1.0 / first) - (1.0 / 91) + (1.0 / second) - (1.0 / 120)), 1e-7);
    }, iter: 80);

    [Fact]
    public void All_fitted_shares_stay_below_one_and_order_changes_nothing() => RegressionRows.Drawn.Sample(rows =>
    {
        var fit = LogBinomialRegression.Fit(rows);
        LogBinomialRegression.Fit([.. rows.Reverse()]).Coefficients.Should().Equal(fit.Coefficients);
        fit.Fitted.All(share => share > 0 && share < 1).Should().BeTrue();
        if (fit.Reason is null) fit.Deviance!.Value.Should().BeLessThanOrEqualTo(fit.NullDeviance!.Value + 1e-8);
    }, iter: 80);

    [Fact]
    public void A_row_of_nothing_but_events_may_lie_inside()
    {
        // One of one is no proof of a share of 1: the line through the others decides.
        var fit = LogBinomialRegression.Fit([new(10, 100, [0]), new(20, 100, [1]), new(1, 1, [2]), new(30, 100, [1.5])]);
        fit.Reason.Should().BeNull();
        fit.Fitted[2].Should().BeLessThan(0.6);
    }

    [Fact]
    public void A_largest_likelihood_at_a_share_of_one_is_said()
    {
        LogBinomialRegression.Fit([new(10, 100, [0]), new(40, 40, [1])]).Reason.Should().Be(UndefinedReason.BoundarySolution);
        LogBinomialRegression.Fit([new(2, 10, [0]), new(9, 10, [1]), new(10, 10, [2])]).Reason.Should().Be(UndefinedReason.BoundarySolution);
    }

    [Fact]
    public void What_cannot_be_fitted_says_why()
    {
        LogBinomialRegression.Fit([]).Reason.Should().Be(UndefinedReason.NoTrials);
        LogBinomialRegression.Fit([new(0, 5, [1])]).Reason.Should().Be(UndefinedReason.NoEvents);
        LogBinomialRegression.Fit([new(5, 5, [1])]).Reason.Should().Be(UndefinedReason.OnlyEvents);
        LogBinomialRegression.Fit([new(1, 5, [1]), new(2, 5, [1])]).Reason.Should().Be(UndefinedReason.CollinearTerms);
        var site = LogBinomialRegression.Fit([new(1, 5, [0]), new(0, 7, [1])]);
        site.Reason.Should().Be(UndefinedReason.Separation);
        site.UnboundedTerms.Should().Equal(1);
        LogBinomialRegression.Fit([new(1, 5, []), new(2, 5, [])], new RateOptions { Constant = false }).Reason.Should().Be(UndefinedReason.NoValues);
        FluentActions.Invoking(() => LogBinomialRegression.Fit([new(1, 5, []), new(2, 5, [1])])).Should().Throw<ArgumentException>();
    }

    [Fact]
    public void Without_a_constant_the_search_starts_where_all_shares_are_possible()
    {
        var fit = LogBinomialRegression.Fit([new(10, 100, [1, 0]), new(30, 100, [0, 1])], new RateOptions { Constant = false });
        fit.Coefficients[0].Should().BeApproximately(Math.Log(0.1), 1e-10);
        fit.Coefficients[1].Should().BeApproximately(Math.Log(0.3), 1e-10);
        fit.NullDeviance.Should().BeNull();
    }
}
