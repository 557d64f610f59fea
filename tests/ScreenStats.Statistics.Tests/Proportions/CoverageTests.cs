using ScreenStats.Statistics.Proportions;

namespace ScreenStats.Statistics.Tests.Proportions;

/// <summary>How often the 95 % intervals hold the true rate: exactly, by summing the binomial over all outcomes.</summary>
public sealed class CoverageTests
{
    private static readonly double[] Rates = [.. Enumerable.Range(1, 199).Select(i => i / 400.0)];

    [Theory]
    [InlineData(20)]
    [InlineData(100)]
    [InlineData(400)]
    public void Clopper_Pearson_never_covers_less_than_it_says(int trials) =>
        Coverage(IntervalMethod.ClopperPearson, trials).Min().Should().BeGreaterThanOrEqualTo(0.95 - 1e-12);

    [Theory]
    [InlineData(IntervalMethod.Wilson, 20, 0.945, 0.960)]
    [InlineData(IntervalMethod.Wilson, 100, 0.945, 0.957)]
    [InlineData(IntervalMethod.Wilson, 400, 0.947, 0.955)]
    [InlineData(IntervalMethod.Jeffreys, 20, 0.940, 0.960)]
    [InlineData(IntervalMethod.Jeffreys, 100, 0.945, 0.957)]
    [InlineData(IntervalMethod.Jeffreys, 400, 0.947, 0.955)]
    [InlineData(IntervalMethod.MidP, 20, 0.948, 0.972)]
    [InlineData(IntervalMethod.MidP, 100, 0.948, 0.962)]
    [InlineData(IntervalMethod.MidP, 400, 0.949, 0.957)]
    [InlineData(IntervalMethod.AgrestiCoull, 100, 0.950, 0.968)]
    [InlineData(IntervalMethod.WilsonContinuity, 100, 0.960, 0.985)]
    public void On_average_over_rates_the_coverage_is_near_the_nominal(IntervalMethod method, int trials, double least, double most) =>
        Coverage(method, trials).Average().Should().BeInRange(least, most);

    [Fact]
    public void Wilson_with_continuity_correction_seldom_covers_less_than_it_says() =>
        Coverage(IntervalMethod.WilsonContinuity, 100).Min().Should().BeGreaterThan(0.94);

    private static List<double> Coverage(IntervalMethod method, int trials)
    {
        var intervals = Enumerable.Range(0, trials + 1).Select(x => ProportionInterval.Of(method, x, trials).Interval!.Value).ToArray();
        var logChoose = new double[trials + 1];
        for (var x = 1; x <= trials; x++) logChoose[x] = logChoose[x - 1] + Math.Log((trials - x + 1.0) / x);
        return [.. Rates.Select(rate => Enumerable.Range(0, trials + 1)
            .Where(x => intervals[x].Contains(rate))
            .Sum(x => Math.Exp(logChoose[x] + (x * Math.Log(rate)) + ((trials - x) * Math.Log(1 - rate)))))];
    }
}
