using ScreenStats.Statistics.Regression;
using ScreenStats.Statistics.Regression.Rates;
using ScreenStats.Statistics.Tests.Heterogeneity;
using ScreenStats.Statistics.Tests.Regression;
using ScreenStats.Statistics.Tests.Regression.Rates;
using ScreenStats.Statistics.Trends.RobustErrors;

namespace ScreenStats.Statistics.Tests.Trends.RobustErrors;

public sealed class NeweyWestTests
{
    private static readonly Gen<double[]> Values = Gen.Double[-5, 5].Array[8, 40];

    [Fact]
    public void Every_row_of_the_reference_table_is_met() => Mismatches.ShouldBeNone(ReferenceTable.Load("newey-west"), row =>
    {
        var options = new NeweyWestOptions { Lag = (int)row.Count("lag"), SmallSampleFactor = row.Text("factor") == "TRUE" };
        var fit = Fit(row, options);
        return
        [
            .. GroupRows.Mismatches(row, "coefficients", fit.Coefficients.Select(b => (double?)b)), .. GroupRows.Mismatches(row, "model_errors", fit.ModelErrors.Select(b => (double?)b)),
            .. GroupRows.Mismatches(row, "standard_errors", fit.StandardErrors.Select(b => (double?)b)),
        ];
    });

    [Fact]
    public void The_table_has_at_least_fifteen_independent_rows_of_each_model()
    {
        foreach (var model in new[] { "least-squares", "odds", "share", "events" }) ReferenceTable.Load("newey-west").Count(row => row.Text("model") == model).Should().BeGreaterThanOrEqualTo(12, model);
    }

    [Theory]
    [InlineData(1, 0)]
    [InlineData(2, 1)]
    [InlineData(3, 1)]
    [InlineData(12, 2)]
    [InlineData(59, 3)]
    [InlineData(100, 4)]
    [InlineData(260, 4)]
    public void The_usual_lag_is_as_documented(int periods, int lag) => NeweyWest.UsualLag(periods).Should().Be(lag);

    [Fact]
    public void Turning_the_series_round_changes_no_error_and_lag_zero_knows_no_order() => Values.Sample(values =>
    {
        double[][] terms = [.. values.Select((_, i) => new[] { (double)i })];
        var fit = NeweyWest.LeastSquaresFit(values, terms, new NeweyWestOptions { Lag = 3 });
        var turned = NeweyWest.LeastSquaresFit([.. values.Reverse()], [.. terms.Reverse()], new NeweyWestOptions { Lag = 3 });
        RegressionRows.Close(fit.StandardErrors, turned.StandardErrors, 1e-9).Should().BeTrue();
        int[] order = [.. Enumerable.Range(0, values.Length).OrderBy(i => (i * 7919) % 101)];
        var zero = NeweyWest.LeastSquaresFit(values, terms, new NeweyWestOptions { Lag = 0 });
        var shuffled = NeweyWest.LeastSquaresFit([.. order.Select(i => values[i])], [.. order.Select(i => terms[i])], new NeweyWestOptions { Lag = 0 });
        RegressionRows.Close(zero.StandardErrors, shuffled.StandardErrors, 1e-9).Should().BeTrue();
    }, iter: 60);

    [Fact]
    public void The_mean_of_a_series_has_the_error_of_the_sum_of_its_weighted_autocovariances() => Values.Sample(values =>
    {
        var mean = values.Average();
        var n = values.Length;
        double Cov(int lag) => Enumerable.Range(lag, n - lag).Sum(t => (values[t] - mean) * (values[t - lag] - mean)) / n;
        var variance = (Cov(0) + (2 * ((2 / 3.0 * Cov(1)) + (1 / 3.0 * Cov(2))))) / n;
        var fit = NeweyWest.LeastSquaresFit(values, [.. values.Select(_ => Array.Empty<double>())], new NeweyWestOptions { Lag = 2 });
        fit.StandardErrors[0].Should().BeApproximately(Math.Sqrt(Math.Max(0, variance)), 1e-9);
    }, iter: 60);

    [Fact]
    public void Terms_of_very_different_size_lose_no_digits()
    {
        double[] x = [1e6 + 1, 1e6 + 2, 1e6 + 3, 1e6 + 4, 1e6 + 5], y = [2, 4.5, 5.5, 8, 10];
        var (far, near) = (LeastSquares.Fit(y, [.. x.Select(v => new[] { v })]), LeastSquares.Fit(y, [.. x.Select(v => new[] { v - 1e6 })]));
        far.Coefficients[1].Should().BeApproximately(near.Coefficients[1], 1e-8);
        far.StandardErrors[1].Should().BeApproximately(near.StandardErrors[1], 1e-8);
        near.Coefficients[1].Should().BeApproximately(1.95, 1e-12);
    }

    [Fact]
    public void What_cannot_be_fitted_says_why()
    {
        NeweyWest.LeastSquaresFit([], []).Reason.Should().Be(UndefinedReason.NoValues);
        NeweyWest.LeastSquaresFit([1, 2], [[1], [2]]).Reason.Should().Be(UndefinedReason.NoDegreesOfFreedom);
        NeweyWest.LeastSquaresFit([1, 2, 3], [[1], [1], [1]]).Reason.Should().Be(UndefinedReason.CollinearTerms);
        LeastSquares.Fit([1, 2, 4], [[1], [1], [1]]).Reason.Should().Be(UndefinedReason.CollinearTerms);
        NeweyWest.Logistic([new(1, 5, [1]), new(2, 5, [2])]).Reason.Should().Be(UndefinedReason.NoDegreesOfFreedom);
        NeweyWest.Logistic([new(0, 5, [1]), new(0, 5, [2])]).Reason.Should().Be(UndefinedReason.NoEvents);
        NeweyWest.Poisson([new(0, 5, [1]), new(0, 5, [2])]).Reason.Should().Be(UndefinedReason.NoEvents);
        NeweyWest.LogBinomial([]).Reason.Should().Be(UndefinedReason.NoTrials);
        FluentActions.Invoking(() => NeweyWest.LeastSquaresFit([1], [[1], [2]])).Should().Throw<ArgumentException>();
        FluentActions.Invoking(() => NeweyWest.LeastSquaresFit([double.NaN], [[1]])).Should().Throw<ArgumentOutOfRangeException>();
        FluentActions.Invoking(() => NeweyWest.Poisson([], new NeweyWestOptions { Lag = -1 })).Should().Throw<ArgumentOutOfRangeException>();
        FluentActions.Invoking(() => NeweyWest.UsualLag(0)).Should().Throw<ArgumentOutOfRangeException>();
    }

    private static RobustFit Fit(ReferenceRow row, NeweyWestOptions options)
    {
        if (row.Text("model") == "least-squares")
        {
            string[][] parts = [.. row.Text("rows").Split(' ').Select(part => part.Split(':'))];
            return NeweyWest.LeastSquaresFit([.. parts.Select(part => RateRows.Number(part[0]))], [.. parts.Select(part => part[1].Split(';').Select(RateRows.Number).ToArray())], options);
        }

        return row.Text("model") switch
        {
            "odds" => NeweyWest.Logistic(RateRows.Binomial(row.Text("rows")), options),
            "share" => NeweyWest.LogBinomial(RateRows.Binomial(row.Text("rows")), options),
            _ => NeweyWest.Poisson(RateRows.Poisson(row.Text("rows")), options),
        };
    }
}
