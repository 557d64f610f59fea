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

    [Fact]
    public void Every_row_of_the_reference_table_is_met() => Mismatches.ShouldBeNone(ReferenceTable.Load("interval-coverages"), row =>
    {
        IntervalMethods.TryParse(row.Text("method"), out var method).Should().BeTrue();
        var coverage = IntervalCoverage.Of(method, (int)row.Count("trials"), row.Number("confidence"));
        return [row.Mismatch("coverage", coverage.At(row.Number("rate"))), row.Mismatch("width", coverage.WidthAt(row.Number("rate")))];
    });

    [Fact]
    public void A_rate_and_its_mirror_are_covered_alike() =>
        Gen.Select(Gen.Int[0, 5], Gen.Int[1, 300], Gen.Double[0, 1]).Sample((index, trials, rate) =>
        {
            var coverage = IntervalCoverage.Of(IntervalMethods.All[index], trials);
            return Math.Abs(coverage.WidthAt(rate) - coverage.WidthAt(1 - rate)) < 1e-11 && coverage.At(rate) is >= 0 and <= 1 + 1e-12;
        });

    [Fact]
    public void A_rate_of_zero_or_one_is_always_covered()
    {
        foreach (var method in IntervalMethods.All)
        {
            IntervalCoverage.Of(method, 30).At(0).Should().Be(1);
            IntervalCoverage.Of(method, 30).At(1).Should().Be(1);
        }
    }

    [Fact]
    public void Trials_confidence_and_rate_outside_their_domain_are_refused_by_name()
    {
        var calls = new (Action Call, string Name)[]
        {
            (() => IntervalCoverage.Of(IntervalMethod.Wilson, 0), "trials"), (() => IntervalCoverage.Of(IntervalMethod.Wilson, 5, 1), "confidence"),
            (() => IntervalCoverage.Of((IntervalMethod)99, 5), "method"), (() => IntervalCoverage.Of(IntervalMethod.Wilson, 5).At(1.1), "rate"),
        };
        foreach (var (call, name) in calls) call.Should().Throw<ArgumentOutOfRangeException>().WithParameterName(name);
    }

    private static List<double> Coverage(IntervalMethod method, int trials)
    {
        var coverage = IntervalCoverage.Of(method, trials);
        return [.. Rates.Select(coverage.At)];
    }
}
