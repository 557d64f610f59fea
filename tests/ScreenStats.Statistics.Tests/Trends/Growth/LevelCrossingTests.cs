using ScreenStats.Statistics.Regression;
using ScreenStats.Statistics.Trends.Growth;
using ScreenStats.Statistics.Trends.Series;

namespace ScreenStats.Statistics.Tests.Trends.Growth;

public sealed class LevelCrossingTests
{
    [Fact]
    public void Every_row_of_the_reference_table_is_met() => Mismatches.ShouldBeNone(ReferenceTable.Load("level-crossings"), row =>
    {
        var line = new FittedLine(row.Number("origin"), row.Number("intercept"), row.Number("slope"), row.Number("intercept_variance"), row.Number("covariance"), row.Number("slope_variance"));
        var crossing = LevelCrossing.Of(line, row.Number("level"), row.Number("confidence"));
        return
        [
            row.Mismatch("time", crossing.Delta.Value), row.Mismatch("standard_error", crossing.StandardError), row.Mismatch("lower", crossing.Delta.Lower), row.Mismatch("upper", crossing.Delta.Upper),
            row.Mismatch("fieller_lower", crossing.Fieller.Lower), row.Mismatch("fieller_upper", crossing.Fieller.Upper),
        ];
    });

    /// <summary>Tobacco budworm (Collett 1991; Venables, Ripley, section 7.2, who print 2.2313 .2499, 3.2636 .2298, 4.2959 .2747; from memory), computed apart with R 4.2.2.</summary>
    [Theory]
    [InlineData(0, 0.25, 2.231264657, 0.249908907)]
    [InlineData(0, 0.5, 3.263587404, 0.229753865)]
    [InlineData(0, 0.75, 4.295910151, 0.274687435)]
    [InlineData(1, 0.5, 2.229262170, 0.225964918)]
    public void The_budworm_doses_at_which_a_share_dies_are_met(int male, double share, double dose, double error)
    {
        long[] female = [0, 2, 6, 10, 12, 16], males = [1, 4, 9, 13, 18, 20];
        var fit = LogisticRegression.Fit(
            [.. female.Select((x, i) => new BinomialRow(x, 20, [1, 0, i])), .. males.Select((x, i) => new BinomialRow(x, 20, [0, 1, i]))], new LogisticOptions { Constant = false });
        var line = new FittedLine(0, fit.Coefficients[male], fit.Coefficients[2], fit.Covariance[male][male], fit.Covariance[male][2], fit.Covariance[2][2]);
        var crossing = LevelCrossing.Of(line, Math.Log(share / (1 - share)));
        crossing.Delta.Value!.Value.Should().BeApproximately(dose, 1e-8);
        crossing.StandardError!.Value.Should().BeApproximately(error, 2e-7);
        crossing.Fieller.Lower!.Value.Should().BeLessThan(dose);
        crossing.Fieller.Upper!.Value.Should().BeGreaterThan(dose);
    }

    [Fact]
    public void The_origin_of_a_line_changes_nothing() =>
        Gen.Select(Gen.Double[-3, 3], Gen.Double[0.3, 1], Gen.Double[-0.9, 0.9], Gen.Double[-2, 2], Gen.Double[-20, 20]).Sample((intercept, slope, correlation, level, origin) =>
        {
            var line = new FittedLine(0, intercept, slope, 0.04, correlation * 0.2 * 0.1, 0.01);
            var (here, there) = (LevelCrossing.Of(line, level), LevelCrossing.Of(line.From(origin), level));
            there.Delta.Value!.Value.Should().BeApproximately(here.Delta.Value!.Value, 1e-9);
            there.StandardError!.Value.Should().BeApproximately(here.StandardError!.Value, 1e-9);
            there.Fieller.Lower!.Value.Should().BeApproximately(here.Fieller.Lower!.Value, 1e-7);
            there.Fieller.Upper!.Value.Should().BeApproximately(here.Fieller.Upper!.Value, 1e-7);
            here.Delta.Value!.Value.Should().BeInRange(here.Fieller.Lower!.Value, here.Fieller.Upper!.Value);

            // At Fieller's limits the line is just as far from the level as chance allows.
            var at = here.Fieller.Upper!.Value;
            Math.Abs(line.At(at) - level).Should().BeApproximately(1.959963984540054 * Math.Sqrt(line.VarianceAt(at)), 1e-7);
        }, iter: 200);

    [Fact]
    public void A_slope_that_may_be_nil_leaves_the_time_open()
    {
        var crossing = LevelCrossing.Of(new FittedLine(0, -2, 0.1, 0.01, 0, 0.01), -1);
        crossing.Fieller.Value!.Value.Should().BeApproximately(10, 1e-12);
        crossing.Fieller.LowerReason.Should().Be(UndefinedReason.SlopeMayBeNil);
        crossing.Fieller.Upper.Should().BeNull();
        LevelCrossing.Of(new FittedLine(0, -2, 0, 0.01, 0, 0.01), -1).Delta.Reason.Should().Be(UndefinedReason.SlopeNil);
    }

    [Fact]
    public void A_series_reaches_a_rate_when_its_line_does()
    {
        CountPoint[] points = [new(0, 10, 1000), new(1, 14, 1000), new(2, 20, 1000), new(3, 28, 1000)];
        foreach (var scale in Enum.GetValues<TrendScale>())
        {
            var growth = GrowthRate.Of(points, new SeriesOptions { Scale = scale });
            var crossing = LevelCrossing.Of(growth, 0.05);
            var at = growth.Line!.At(crossing.Delta.Value!.Value);
            (scale == TrendScale.Odds ? 1 / (1 + Math.Exp(-at)) : Math.Exp(at)).Should().BeApproximately(0.05, 1e-12);
            crossing.Delta.Value!.Value.Should().BeInRange(4, 5.5);
        }

        LevelCrossing.Of(GrowthRate.Of(new CountPoint[] { new(0, 0, 10), new(1, 0, 10) }), 0.05).Delta.Reason.Should().Be(UndefinedReason.NoEvents);
        LevelCrossing.Of(GrowthRate.Of(points[..2], new SeriesOptions { Limits = TrendLimits.Quasi }), 0.05).Delta.Reason.Should().Be(UndefinedReason.NoDegreesOfFreedom);
        FluentActions.Invoking(() => LevelCrossing.Of(GrowthRate.Of(points), 1)).Should().Throw<ArgumentOutOfRangeException>();
        FluentActions.Invoking(() => new FittedLine(0, 0, 0, -1, 0, 0)).Should().Throw<ArgumentOutOfRangeException>();
    }
}
