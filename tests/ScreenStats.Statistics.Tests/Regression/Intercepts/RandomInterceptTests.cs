using ScreenStats.Statistics.Regression;
using ScreenStats.Statistics.Regression.Intercepts;
using ScreenStats.Statistics.Tests.Heterogeneity;

namespace ScreenStats.Statistics.Tests.Regression.Intercepts;

public sealed class RandomInterceptTests
{
    [Fact]
    public void Every_row_of_the_table_of_fits_is_met() => Mismatches.ShouldBeNone(ReferenceTable.Load("random-intercepts"), row =>
    {
        var fit = RandomInterceptLogistic.Fit(RegressionRows.Read(row), new RandomInterceptOptions { Nodes = (int)row.Count("nodes") });
        return
        [
            .. GroupRows.Mismatches(row, "coefficients", fit.Coefficients.Select(b => (double?)b)), .. GroupRows.Mismatches(row, "standard_errors", fit.StandardErrors.Select(b => (double?)b)),
            row.Mismatch("variance", fit.Variance), row.Mismatch("log_likelihood", fit.LogLikelihood), .. GroupRows.Mismatches(row, "modes", fit.Effects.Select(effect => effect.Mode)),
            .. GroupRows.Mismatches(row, "means", fit.Effects.Select(effect => effect.Mean)), .. GroupRows.Mismatches(row, "deviations", fit.Effects.Select(effect => effect.StandardDeviation)),
        ];
    });

    // R's lme4 stops a little before the top (see the reference notes on cbpp), so that its rows are met at 2e-4 only; its errors come from
    // differences of rounded deviances, so that they are met at 4e-3 of themselves.
    [Fact]
    public void Every_row_of_the_table_of_fits_by_lme4_is_met() => Mismatches.ShouldBeNone(ReferenceTable.Load("random-intercepts-lme4"), row =>
    {
        var fit = RandomInterceptLogistic.Fit(RegressionRows.Read(row), new RandomInterceptOptions { Nodes = (int)row.Count("nodes") });
        return
        [
            .. GroupRows.Mismatches(row, "coefficients", fit.Coefficients.Select(b => (double?)b)), row.Mismatch("variance", fit.Variance), row.Mismatch("log_likelihood", fit.LogLikelihood),
            .. GroupRows.Mismatches(row, "modes", fit.Effects.Select(effect => effect.Mode)),
            .. row.Numbers("standard_errors").Zip(fit.StandardErrors, (wanted, error) => Math.Abs(error - wanted) <= 4e-3 * wanted ? null : $"{row}: error {wanted:R} (relative 4e-3), is {error:R}"),
        ];
    });

    [Fact]
    public void The_table_by_lme4_has_thirty_rows_of_each_kind_with_sites_without_positives_without_tests_and_two_sites()
    {
        var rows = ReferenceTable.Load("random-intercepts-lme4");
        rows.Count(row => row.Text("nodes") == "1").Should().BeGreaterThanOrEqualTo(30);
        rows.Count(row => row.Text("nodes") == "25").Should().BeGreaterThanOrEqualTo(30);
        foreach (var kind in new[] { "no-positives", "two-sites", "no-tests" }) rows.Should().Contain(row => row.Id.EndsWith(kind, StringComparison.Ordinal), kind);
    }

    [Fact]
    public void Every_row_of_the_table_of_adjusted_rates_is_met() => Mismatches.ShouldBeNone(ReferenceTable.Load("random-intercept-rates"), row =>
    {
        var rate = RandomInterceptLogistic.Fit(RegressionRows.Read(row), new RandomInterceptOptions { Nodes = (int)row.Count("nodes") }).Effects[0].Rate;
        return [row.Mismatch("rate", rate.Value), row.Mismatch("lower", rate.Lower), row.Mismatch("upper", rate.Upper)];
    });

    [Fact]
    public void The_tables_have_at_least_fifty_independent_rows_of_which_twenty_by_Laplaces_approximation()
    {
        foreach (var name in new[] { "random-intercepts", "random-intercept-rates" })
        {
            var rows = ReferenceTable.Load(name).Where(row => row.Kind == "independent").ToList();
            rows.Count.Should().BeGreaterThanOrEqualTo(50, name);
            rows.Count(row => row.Text("nodes") == "1").Should().BeGreaterThanOrEqualTo(20, name);
        }
    }

    [Fact]
    public void More_nodes_change_nothing_and_labels_and_order_do_not_matter() => RegressionRows.Drawn.Sample(rows =>
    {
        var fit = RandomInterceptLogistic.Fit(rows);
        BinomialRow[] relabelled = [.. rows.Reverse().Select(row => new BinomialRow(row.Events, row.Trials, row.Terms, 20 - row.Group))];
        var turned = RandomInterceptLogistic.Fit(relabelled);
        turned.Reason.Should().Be(fit.Reason);
        turned.Coefficients.Should().Equal(fit.Coefficients);
        turned.Effects.Reverse().Select(effect => effect.Mean).Should().Equal(fit.Effects.Select(effect => effect.Mean));
        turned.Effects.Reverse().Select(effect => effect.Rate).Should().Equal(fit.Effects.Select(effect => effect.Rate));
        if (fit.Reason is not null) return;
        if (fit.StandardDeviation.Value < 2)
        {
            var more = RandomInterceptLogistic.Fit(rows, new RandomInterceptOptions { Nodes = 61 });
            fit.Coefficients.Zip(more.Coefficients, fit.StandardErrors).Should().NotBeEmpty().And.OnlyContain(b => Math.Abs(b.First - b.Second) < 1e-2 * b.Third);
            fit.LogLikelihood!.Value.Should().BeApproximately(more.LogLikelihood!.Value, 2e-3);
        }

        foreach (var effect in fit.Effects)
            (effect.Rate.Value > 0 && effect.Rate.Value < 1 && effect.StandardDeviation > 0 && effect.StandardDeviation < 1.2 * fit.StandardDeviation.Value).Should().BeTrue();
    }, iter: 20);

    [Fact]
    public void A_site_with_no_positives_gets_a_rate_above_zero_and_a_small_site_is_drawn_further_in()
    {
        BinomialRow[] rows = [new(0, 12, [], 0), new(0, 3000, [], 1), new(30, 1000, [], 2), new(55, 1000, [], 3), new(12, 900, [], 4), new(41, 1100, [], 5)];
        var fit = RandomInterceptLogistic.Fit(rows);
        fit.Reason.Should().BeNull();
        fit.Effects[0].Rate.Value.Should().BeGreaterThan(fit.Effects[1].Rate.Value!.Value);
        fit.Effects[1].Rate.Value.Should().BeGreaterThan(0);
        fit.Effects[0].Rate.Interval!.Value.Width.Should().BeGreaterThan(fit.Effects[1].Rate.Interval!.Value.Width);
    }

    // Raw rates put the first site on top: it tested in the wave. In each of the two periods it has the lowest rate.
    [Fact]
    public void Raw_ranking_and_adjusted_ranking_disagree_and_the_adjusted_one_is_the_true_one()
    {
        BinomialRow[] rows =
        [
            new(120, 2000, [1], 0), new(1, 200, [0], 0), new(20, 200, [1], 1), new(24, 2000, [0], 1), new(24, 200, [1], 2), new(28, 2000, [0], 2), new(18, 200, [1], 3), new(22, 2000, [0], 3),
        ];
        var fit = RandomInterceptLogistic.Fit(rows);
        fit.Effects.MaxBy(effect => (double)effect.Events / effect.Trials)!.Group.Should().Be(0);
        fit.Effects.MinBy(effect => effect.Rate.Value)!.Group.Should().Be(0);
    }

    [Fact]
    public void Groups_that_are_all_alike_have_no_variance_and_say_so()
    {
        var fit = RandomInterceptLogistic.Fit([new(10, 100, [], 0), new(20, 200, [], 1), new(5, 50, [], 2)]);
        fit.Reason.Should().Be(UndefinedReason.GroupsAllAlike);
        fit.Variance.Should().Be(0);
        fit.Coefficients.Single().Should().BeApproximately(Math.Log(1 / 9.0), 1e-10);
        fit.Effects.Should().HaveCount(3).And.OnlyContain(effect => effect.Rate.Reason == UndefinedReason.GroupsAllAlike && effect.Mean == null);
    }

    [Fact]
    public void What_cannot_be_fitted_says_why()
    {
        RandomInterceptLogistic.Fit([]).Reason.Should().Be(UndefinedReason.NoTrials);
        RandomInterceptLogistic.Fit([new(0, 50, [], 0), new(0, 60, [], 1)]).Reason.Should().Be(UndefinedReason.NoEvents);
        RandomInterceptLogistic.Fit([new(3, 50, [], 0), new(5, 60, [], 0)]).Reason.Should().Be(UndefinedReason.FewerThanTwoGroups);
        RandomInterceptLogistic.Fit([new(0, 1, [], 0), new(1, 1, [], 1), new(0, 1, [], 2)]).Reason.Should().Be(UndefinedReason.OneTrialInEachCluster);
        RandomInterceptLogistic.Fit([new(0, 50, [0], 0), new(5, 60, [1], 1)]).Reason.Should().Be(UndefinedReason.Separation);
        var two = RandomInterceptLogistic.Fit([new(2, 500, [], 0), new(60, 500, [], 1)]);
        (two.Reason is null && two.Effects.Count == 2 && two.StandardDeviation.Upper > two.StandardDeviation.Value).Should().BeTrue();
        FluentActions.Invoking(() => RandomInterceptLogistic.Fit([], new RandomInterceptOptions { Nodes = 3 })).Should().Throw<ArgumentOutOfRangeException>();
    }

    [Fact]
    public void Groups_that_are_all_or_nothing_or_of_which_one_has_all_events_are_too_unlike_for_one_spread()
    {
        var fit = RandomInterceptLogistic.Fit([new(0, 50, [], 0), new(40, 40, [], 1), new(0, 30, [], 2), new(20, 20, [], 3)]);
        fit.Reason.Should().Be(UndefinedReason.GroupsTooUnlike);
        fit.Effects.Should().BeEmpty();
        RandomInterceptLogistic.Fit([new(0, 269, [], 0), new(0, 389, [], 1), new(0, 288, [], 2), new(0, 300, [], 3), new(90, 300, [], 4)]).Reason.Should().Be(UndefinedReason.GroupsTooUnlike);
    }
}
