using ScreenStats.Statistics.Tests.Heterogeneity;
using ScreenStats.Statistics.Trends.Smooths;

namespace ScreenStats.Statistics.Tests.Trends.Smooths;

public sealed class GaussianLevelTests
{
    private static readonly Gen<double?[]> Drawn = Gen.Select(Gen.Double[-5, 5], Gen.Int[0, 4]).Select((value, missing) => missing == 0 ? (double?)null : Math.Round(value, 2)).Array[4, 20];

    [Fact]
    public void Every_row_of_the_reference_table_is_met() => Mismatches.ShouldBeNone(ReferenceTable.Load("gaussian-levels"), row =>
    {
        double?[] values = [.. row.Text("values").Split(' ').Select(part => part == "." ? (double?)null : LevelRows.Number(part))];
        var fit = row.Has("noise") ? GaussianLevel.Smooth(values, row.Number("noise"), row.Number("level")) : GaussianLevel.MaximumLikelihood(values);
        return
        [
            row.Mismatch("log_likelihood", fit.LogLikelihood), row.Mismatch("noise_variance", fit.NoiseVariance), row.Mismatch("level_variance", fit.LevelVariance),
            .. GroupRows.Mismatches(row, "filtered", fit.Points.Where(point => point.Filtered is not null).Select(point => point.Filtered)),
            .. GroupRows.Mismatches(row, "filtered_variances", fit.Points.Where(point => point.Filtered is not null).Select(point => point.FilteredVariance)),
            .. GroupRows.Mismatches(row, "smoothed", fit.Points.Select(point => (double?)point.Smoothed)),
            .. GroupRows.Mismatches(row, "smoothed_variances", fit.Points.Select(point => (double?)point.SmoothedVariance)),
        ];
    });

    [Fact]
    public void The_table_has_at_least_thirty_independent_rows_with_variances_given_and_with_the_most_likely()
    {
        var rows = ReferenceTable.Load("gaussian-levels").Where(row => row.Kind == "independent").ToList();
        rows.Count(row => row.Has("noise")).Should().BeGreaterThanOrEqualTo(30);
        rows.Count(row => !row.Has("noise")).Should().BeGreaterThanOrEqualTo(30);
    }

    [Fact]
    public void Time_turned_round_a_shift_and_a_scale_give_the_same_smooth() => Drawn.Sample(values =>
    {
        var fit = GaussianLevel.MaximumLikelihood(values);
        var turned = GaussianLevel.MaximumLikelihood([.. values.Reverse().Select(value => value is { } v ? 100 + (3 * v) : (double?)null)]);
        fit.Reason.Should().Be(turned.Reason);
        if (fit.Reason is not null) return;
        turned.NoiseVariance.Should().BeApproximately(9 * fit.NoiseVariance!.Value, 1e-5);
        foreach (var (one, other) in fit.Points.Zip(turned.Points.Reverse()))
            other.Smoothed.Should().BeApproximately(100 + (3 * one.Smoothed), 1e-5);
    }, iter: 100);

    [Fact]
    public void Wider_steps_leave_a_wider_band_and_the_last_filtered_level_is_the_last_smoothed() => Drawn.Sample(values =>
    {
        if (values.All(value => value is null)) return;
        var (narrow, wide) = (GaussianLevel.Smooth(values, 1, 0.1), GaussianLevel.Smooth(values, 1, 0.4));
        narrow.Points.Zip(wide.Points).Should().OnlyContain(pair => pair.Second.SmoothedVariance >= pair.First.SmoothedVariance - 1e-12);
        narrow.Points[^1].Filtered.Should().Be(narrow.Points[^1].Smoothed);
        narrow.Points.Should().OnlyContain(point => point.SmoothedBand.Contains(point.Smoothed) && (point.FilteredVariance == null || point.FilteredVariance >= point.SmoothedVariance - 1e-12));
    }, iter: 100);

    [Fact]
    public void A_series_that_swings_around_one_level_has_steps_of_0_and_a_straight_climb_has_no_noise()
    {
        double?[] swings = [1, -1, 1, -1, 1, -1, 1, -1, 1, -1];
        var constant = GaussianLevel.MaximumLikelihood(swings);
        constant.LevelVariance.Should().Be(0);
        constant.Points.Should().OnlyContain(point => Math.Abs(point.Smoothed) < 1e-12);
        constant.NoiseVariance.Should().BeApproximately(10 / 9.0, 1e-12);
        double?[] climb = [1, 2, 3, 4, 5, 6, null, 8];
        var exact = GaussianLevel.MaximumLikelihood(climb);
        exact.NoiseVariance.Should().Be(0);
        exact.Points[6].Smoothed.Should().BeApproximately(7, 1e-12);
        exact.Points[2].SmoothedVariance.Should().Be(0);
    }

    [Fact]
    public void A_period_before_the_first_value_is_smoothed_and_not_filtered()
    {
        var fit = GaussianLevel.Smooth([null, 3, 5], 2, 1);
        fit.Points[0].Filtered.Should().BeNull();
        fit.Points[0].Smoothed.Should().Be(fit.Points[1].Smoothed);
        fit.Points[0].SmoothedVariance.Should().BeApproximately(fit.Points[1].SmoothedVariance + 1, 1e-12);
    }

    [Fact]
    public void What_cannot_be_smoothed_says_why_and_bad_figures_are_refused()
    {
        GaussianLevel.MaximumLikelihood([]).Reason.Should().Be(UndefinedReason.FewerThanThreePeriods);
        GaussianLevel.MaximumLikelihood([1, null, 2]).Reason.Should().Be(UndefinedReason.FewerThanThreePeriods);
        GaussianLevel.MaximumLikelihood([2, 2, 2, 2]).Reason.Should().Be(UndefinedReason.PointsAllAlike);
        GaussianLevel.Smooth([null, null], 1, 1).Reason.Should().Be(UndefinedReason.NoValues);
        GaussianLevel.Smooth([4], 2, 1).Points[0].SmoothedVariance.Should().Be(2);
        FluentActions.Invoking(() => GaussianLevel.Smooth([1], 0, 0)).Should().Throw<ArgumentOutOfRangeException>();
        FluentActions.Invoking(() => GaussianLevel.Smooth([1], -1, 0)).Should().Throw<ArgumentOutOfRangeException>();
        FluentActions.Invoking(() => GaussianLevel.Smooth([double.NaN], 1, 0)).Should().Throw<ArgumentOutOfRangeException>();
    }
}
