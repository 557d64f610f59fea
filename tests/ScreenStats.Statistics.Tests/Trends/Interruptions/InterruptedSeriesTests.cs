using ScreenStats.Statistics.Tests.Heterogeneity;
using ScreenStats.Statistics.Tests.Regression;
using ScreenStats.Statistics.Tests.Regression.Rates;
using ScreenStats.Statistics.Tests.Trends.Growth;
using ScreenStats.Statistics.Trends.Interruptions;
using ScreenStats.Statistics.Trends.RobustErrors;
using ScreenStats.Statistics.Trends.Series;

namespace ScreenStats.Statistics.Tests.Trends.Interruptions;

public sealed class InterruptedSeriesTests
{
    private static CountPoint[] Sicily => SeriesRows.Read(ReferenceTable.Load("interrupted-series").Single(row => row.Id == "sicily-plain").Text("points"));

    [Fact]
    public void Every_row_of_the_reference_table_is_met() => Mismatches.ShouldBeNone(ReferenceTable.Load("interrupted-series"), row =>
    {
        Interruption[] changes = [.. row.Text("changes").Split(' ').Select(text =>
        {
            var parts = text.Split(':');
            return new Interruption(RateRows.Number(parts[0]), parts[1].StartsWith("level", StringComparison.Ordinal), parts[1].EndsWith("slope", StringComparison.Ordinal), RateRows.Number(parts[2]));
        })];
        var fit = InterruptedSeries.Fit(SeriesRows.Read(row.Text("points")), changes, new InterruptionOptions
        {
            Scale = SeriesRows.Scale(row), Limits = SeriesRows.Limits(row), Trend = row.Text("trend") == "TRUE", SeasonPairs = (int)row.Count("pairs"), SeasonLength = row.Number("season"),
        });
        var (first, last) = (fit.Changes[0], fit.Path[^1]);
        return
        [
            .. GroupRows.Mismatches(row, "coefficients", fit.Coefficients.Select(b => (double?)b)), .. GroupRows.Mismatches(row, "standard_errors", fit.StandardErrors.Select(b => (double?)b)),
            .. GroupRows.Mismatches(row, "ratio", Listed(first.LevelRatio)), .. GroupRows.Mismatches(row, "before", Listed(first.SlopeBefore)), .. GroupRows.Mismatches(row, "after", Listed(first.SlopeAfter)),
            .. GroupRows.Mismatches(row, "last_fitted", Listed(last.Fitted)), .. GroupRows.Mismatches(row, "last_unchanged", Listed(last.Unchanged)), .. GroupRows.Mismatches(row, "last_ratio", Listed(last.Ratio)),
            row.Mismatch("deviance", fit.Deviance), row.Mismatch("akaike", fit.Akaike), row.Mismatch("dispersion", fit.Dispersion), row.Mismatch("durbin_watson", fit.DurbinWatson),
        ];
    });

    [Fact]
    public void The_table_has_at_least_fifty_independent_rows() =>
        ReferenceTable.Load("interrupted-series").Count(row => row.Kind == "independent").Should().BeGreaterThanOrEqualTo(50);

    /// <summary>Lopez Bernal, Cummins, Gasparrini 2017, Int J Epidemiol 46:348 (data of their repository), computed apart with R 4.2.2.</summary>
    [Fact]
    public void The_other_figures_of_the_smoking_ban_are_met()
    {
        var step = InterruptedSeries.Fit(Sicily, [new Interruption(37)], new InterruptionOptions { Scale = TrendScale.Events });
        step.Changes[0].SlopeBefore!.Value!.Value.Should().BeApproximately(0.004944992, 1e-9);
        step.StandardErrors[1].Should().BeApproximately(0.000499230, 2e-9);
        Autocorrelation.LjungBox(step.Residuals, 12).Statistic!.Value.Should().BeApproximately(58.11632294, 1e-5);
        step.LjungBox!.DegreesOfFreedom.Should().Be(11);

        var season = InterruptedSeries.Fit(Sicily, [new Interruption(37)], new InterruptionOptions { Scale = TrendScale.Events, Limits = TrendLimits.Quasi, SeasonPairs = 2, SeasonLength = 12 });
        season.Coefficients[^1].Should().BeApproximately(-0.122086793, 1e-8);
        season.StandardErrors[^1].Should().BeApproximately(0.027031107, 1e-7);
        season.Changes[0].SlopeBefore!.Value!.Value.Should().BeApproximately(0.005389220, 1e-9);

        var slope = InterruptedSeries.Fit(Sicily, [new Interruption(37, Slope: true, SlopeFrom: 36)], new InterruptionOptions { Scale = TrendScale.Events });
        slope.Changes[0].SlopeBefore!.Value!.Value.Should().BeApproximately(0.004854916, 1e-9);
        slope.Coefficients[2].Should().BeApproximately(-0.114111026, 1e-8);
        slope.Coefficients[3].Should().BeApproximately(0.000416845, 1e-9);
        slope.StandardErrors[3].Should().BeApproximately(0.001212982, 1e-8);
    }

    [Fact]
    public void The_mean_counts_and_rates_before_and_after_are_those_of_the_authors()
    {
        var before = Sicily.Where(point => point.Time < 37).ToList();
        var after = Sicily.Where(point => point.Time >= 37).ToList();
        before.Average(point => point.Events).Should().BeApproximately(810.9, 0.05);
        after.Average(point => point.Events).Should().BeApproximately(857.5, 0.07);
        before.Average(point => point.Events / point.Size * 1e5).Should().BeApproximately(213.3, 0.05);
        after.Average(point => point.Events / point.Size * 1e5).Should().BeApproximately(220.5, 0.06);
    }

    [Fact]
    public void The_known_jump_and_slopes_of_an_exact_series_come_back_on_each_scale()
    {
        foreach (var scale in Enum.GetValues<TrendScale>())
        {
            double Rate(double eta) => scale == TrendScale.Odds ? 1 / (1 + Math.Exp(-eta)) : Math.Exp(eta);
            CountPoint[] points = [.. Enumerable.Range(0, 20).Select(t => new CountPoint(t, 1000 * Rate(-2 + (0.03 * t) + (t >= 12 ? -0.4 - (0.05 * (t - 12)) : 0)), 1000))];
            var fit = InterruptedSeries.Fit(points, [new Interruption(12, Slope: true)], new InterruptionOptions { Scale = scale });
            fit.Changes[0].LevelRatio!.Value!.Value.Should().BeApproximately(Math.Exp(-0.4), 1e-9);
            fit.Changes[0].SlopeBefore!.Value!.Value.Should().BeApproximately(0.03, 1e-9);
            fit.Changes[0].SlopeAfter!.Value!.Value.Should().BeApproximately(-0.02, 1e-9);
            fit.Changes[0].SlopeChange!.Value!.Value.Should().BeApproximately(-0.05, 1e-9);
            fit.Path[19].Unchanged.Value!.Value.Should().BeApproximately(Rate(-2 + (0.03 * 19)), 1e-9);
            fit.Path[19].Ratio.Value!.Value.Should().BeApproximately(Math.Exp(-0.4 - (0.05 * 7)), 1e-9);
            fit.Path[11].Ratio.Should().Match<OpenEstimate>(ratio => ratio.Lower == 1 && ratio.Upper == 1);
            fit.Path[11].Fitted.Should().Be(fit.Path[11].Unchanged);
        }
    }

    [Fact]
    public void A_change_on_the_first_day_or_after_the_last_cannot_be_judged_and_the_others_are()
    {
        CountPoint[] points = [.. Enumerable.Range(0, 20).Select(t => new CountPoint(t, 40 + (t % 3) + (t >= 10 ? 20 : 0), 1000))];
        InterruptedSeries.Fit(points, [new Interruption(0)]).Reason.Should().Be(UndefinedReason.NoDataBeforeChange);
        InterruptedSeries.Fit(points, [new Interruption(19.5)]).Reason.Should().Be(UndefinedReason.NoDataAfterChange);
        var fit = InterruptedSeries.Fit(points, [new Interruption(25), new Interruption(10), new Interruption(-3)]);
        fit.Reason.Should().BeNull();
        fit.Changes.Select(change => change.Reason).Should().Equal(UndefinedReason.NoDataBeforeChange, null, UndefinedReason.NoDataAfterChange);
        fit.Changes[1].LevelRatio!.Lower.Should().BeGreaterThan(1);
        InterruptedSeries.Fit(points, [new Interruption(25), new Interruption(10), new Interruption(-3)]).Coefficients.Should().Equal(InterruptedSeries.Fit(points, [new Interruption(10)]).Coefficients);

        // On the last day: a jump can be seen, a new slope cannot.
        InterruptedSeries.Fit(points, [new Interruption(19)]).Reason.Should().BeNull();
        InterruptedSeries.Fit(points, [new Interruption(19, Slope: true)]).Reason.Should().Be(UndefinedReason.CollinearTerms);
    }

    [Fact]
    public void Periods_without_counts_before_the_change_count_as_none()
    {
        CountPoint[] points = [new(0, 0, 0), new(1, 0, 0), new(2, 5, 100), new(3, 6, 100), new(4, 4, 100)];
        InterruptedSeries.Fit(points, [new Interruption(2)]).Reason.Should().Be(UndefinedReason.NoDataBeforeChange);
        InterruptedSeries.Fit(points, [new Interruption(4)], new InterruptionOptions { Trend = false }).Path.Select(point => point.Time).Should().Equal(0, 1, 2, 3, 4);
    }

    [Fact]
    public void Series_that_say_nothing_give_their_reason()
    {
        InterruptedSeries.Fit(Array.Empty<CountPoint>(), [new Interruption(1)]).Reason.Should().Be(UndefinedReason.NoTrials);
        InterruptedSeries.Fit(new CountPoint[] { new(0, 0, 9), new(1, 0, 9), new(2, 0, 9), new(3, 0, 9) }, [new Interruption(2)]).Reason.Should().Be(UndefinedReason.NoEvents);
        InterruptedSeries.Fit(new CountPoint[] { new(0, 3, 9), new(1, 4, 9), new(2, 0, 9), new(3, 0, 9) }, [new Interruption(2)]).Reason.Should().Be(UndefinedReason.Separation);
        var saturated = InterruptedSeries.Fit(new CountPoint[] { new(0, 3, 9), new(1, 4, 9), new(2, 6, 9) }, [new Interruption(2)], new InterruptionOptions { Limits = TrendLimits.Quasi });
        saturated.Reason.Should().BeNull();
        saturated.Changes[0].LevelRatio!.LowerReason.Should().Be(UndefinedReason.NoDegreesOfFreedom);
        saturated.StandardErrors.Should().BeEmpty();
    }

    [Fact]
    public void Order_of_points_and_changes_changes_nothing_and_all_that_is_given_is_finite() => Gen.Select(SeriesRows.Drawn, Gen.Int[0, 15], Gen.Int[0, 2], Gen.Int[0, 2], Gen.Bool).Sample((points, at, scale, limits, slope) =>
    {
        var options = new InterruptionOptions { Scale = (TrendScale)scale, Limits = (TrendLimits)limits };
        Interruption[] changes = [new(at, Slope: slope), new(at + 3)];
        var fit = InterruptedSeries.Fit(points, changes, options);
        var turned = InterruptedSeries.Fit([.. points.Reverse()], [.. changes.Reverse()], options);
        turned.Reason.Should().Be(fit.Reason);
        turned.Coefficients.Should().Equal(fit.Coefficients);
        foreach (var figure in fit.Path.SelectMany(point => new[] { point.Fitted, point.Unchanged, point.Ratio }).Concat(fit.Changes.SelectMany(change => new[] { change.LevelRatio, change.SlopeAfter }).OfType<OpenEstimate>()))
        {
            foreach (var end in new[] { figure.Value, figure.Lower, figure.Upper }) (end is not { } number || double.IsFinite(number)).Should().BeTrue();
            if (figure.IsClosed) figure.Value!.Value.Should().BeInRange(figure.Lower!.Value, figure.Upper!.Value);
        }

        fit.Changes.Should().OnlyContain(change => change.Reason != null || change.LevelRatio != null);
    }, iter: 300);

    [Fact]
    public void Moving_the_start_of_time_changes_no_estimate() => SeriesRows.Drawn.Sample(points =>
    {
        Interruption[] changes = [new(4, Slope: true)];
        var fit = InterruptedSeries.Fit(points, changes);
        var moved = InterruptedSeries.Fit([.. points.Select(point => new CountPoint(point.Time + 2900, point.Events, point.Size))], [new(2904, Slope: true)]);
        moved.Reason.Should().Be(fit.Reason);
        RegressionRows.Close(fit.Coefficients, moved.Coefficients, 1e-6).Should().BeTrue();
    }, iter: 100);

    [Fact]
    public void What_cannot_be_asked_is_refused()
    {
        CountPoint[] points = [new(0, 1, 9), new(1, 2, 9)];
        FluentActions.Invoking(() => InterruptedSeries.Fit(points, [])).Should().Throw<ArgumentException>();
        FluentActions.Invoking(() => InterruptedSeries.Fit(points, [new Interruption(1), new Interruption(1)])).Should().Throw<ArgumentException>();
        FluentActions.Invoking(() => InterruptedSeries.Fit(points, [new Interruption(1, Level: false)])).Should().Throw<ArgumentException>();
        FluentActions.Invoking(() => InterruptedSeries.Fit(points, [new Interruption(double.NaN)])).Should().Throw<ArgumentOutOfRangeException>();
        FluentActions.Invoking(() => InterruptedSeries.Fit(points, [new Interruption(1)], new InterruptionOptions { Limits = TrendLimits.ProfileLikelihood })).Should().Throw<ArgumentOutOfRangeException>();
        FluentActions.Invoking(() => InterruptedSeries.Fit(points, [new Interruption(1)], new InterruptionOptions { SeasonPairs = 7 })).Should().Throw<ArgumentOutOfRangeException>();
        FluentActions.Invoking(() => InterruptedSeries.Fit(points, [new Interruption(1)], new InterruptionOptions { SeasonLength = 0 })).Should().Throw<ArgumentOutOfRangeException>();
    }

    private static IEnumerable<double?> Listed(OpenEstimate? figure) => figure is null ? [] : [figure.Value, figure.Lower, figure.Upper];
}
