using ScreenStats.Statistics.Trends.RobustErrors;

namespace ScreenStats.Statistics.Tests.Trends.RobustErrors;

public sealed class AutocorrelationTests
{
    [Fact]
    public void Every_row_of_the_reference_table_is_met() => Mismatches.ShouldBeNone(ReferenceTable.Load("autocorrelations"), row =>
    {
        var residuals = row.Numbers("residuals");
        var test = Autocorrelation.LjungBox(residuals, (int)row.Count("lags"), (int)row.Count("fitted"));
        return [row.Mismatch("durbin_watson", Autocorrelation.DurbinWatson(residuals)), row.Mismatch("ljung_box", test.Statistic), row.Mismatch("p_value", test.PValue)];
    });

    [Fact]
    public void Durbin_and_Watson_lies_between_nought_and_four_whatever_the_unit_and_direction() => Gen.Double[-9, 9].Array[2, 30].Sample(values =>
    {
        if (Autocorrelation.DurbinWatson(values) is not { } statistic) return;
        statistic.Should().BeInRange(0, 4);
        Autocorrelation.DurbinWatson([.. values.Reverse().Select(value => -3 * value)])!.Value.Should().BeApproximately(statistic, 1e-9);
    }, iter: 80);

    [Fact]
    public void Alternating_and_constant_residuals_lie_at_the_ends()
    {
        Autocorrelation.DurbinWatson([1, -1, 1, -1])!.Value.Should().Be(3);
        Autocorrelation.DurbinWatson([2, 2, 2])!.Value.Should().Be(0);
        Autocorrelation.DurbinWatson([1]).Should().BeNull();
        Autocorrelation.DurbinWatson([0, 0]).Should().BeNull();
        Autocorrelation.LjungBox([2, 2, 2], 1).Reason.Should().Be(UndefinedReason.PointsAllAlike);
        Autocorrelation.LjungBox([1, 2], 2).Reason.Should().Be(UndefinedReason.NoDegreesOfFreedom);
        FluentActions.Invoking(() => Autocorrelation.LjungBox([1, 2, 3], 0)).Should().Throw<ArgumentOutOfRangeException>();
        FluentActions.Invoking(() => Autocorrelation.LjungBox([1, 2, 3], 1, 1)).Should().Throw<ArgumentOutOfRangeException>();
        FluentActions.Invoking(() => Autocorrelation.DurbinWatson([double.NaN, 1])).Should().Throw<ArgumentOutOfRangeException>();
    }
}
