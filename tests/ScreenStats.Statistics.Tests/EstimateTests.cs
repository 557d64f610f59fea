namespace ScreenStats.Statistics.Tests;

public sealed class EstimateTests
{
    [Fact]
    public void Every_reason_has_words_of_its_own()
    {
        var words = Enum.GetValues<UndefinedReason>().Select(reason => reason.Describe()).ToList();
        words.Should().OnlyHaveUniqueItems().And.NotContain(string.Empty);
        var unknown = () => ((UndefinedReason)999).Describe();
        unknown.Should().Throw<ArgumentOutOfRangeException>();
    }

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    [InlineData(double.NegativeInfinity)]
    public void Nothing_that_is_not_finite_becomes_a_figure(double value)
    {
        foreach (var call in new Action[] { () => Estimate.Point(value, "x"), () => Estimate.Of(value, new Interval(0, 1), "x", 0.95), () => _ = new Interval(value, 1), () => _ = new Interval(0, value) })
            call.Should().Throw<ArgumentOutOfRangeException>();
    }

    [Fact]
    public void An_interval_is_never_upside_down()
    {
        var call = () => new Interval(0.2, 0.1);
        call.Should().Throw<ArgumentOutOfRangeException>().WithParameterName("upper");
        new Interval(0.1, 0.2).Contains(0.2).Should().BeTrue();
        new Interval(0.1, 0.2).Contains(0.21).Should().BeFalse();
    }

    [Fact]
    public void An_undefined_estimate_has_a_reason_and_nothing_else()
    {
        var estimate = Estimate.Undefined(UndefinedReason.NoCases);
        estimate.IsDefined.Should().BeFalse();
        estimate.Value.Should().BeNull();
        estimate.Interval.Should().BeNull();
        estimate.Reason.Should().Be(UndefinedReason.NoCases);
    }

    [Theory]
    [InlineData("")]
    [InlineData("de-DE")]
    [InlineData("tr-TR")]
    public void Text_for_debugging_is_the_same_in_every_culture(string culture)
    {
        var before = Thread.CurrentThread.CurrentCulture;
        try
        {
            Thread.CurrentThread.CurrentCulture = System.Globalization.CultureInfo.GetCultureInfo(culture);
            new Interval(0.25, 0.5).ToString().Should().Be("[0.25, 0.5]");
            Statistics.Proportions.ProportionInterval.Wilson(1, 4).ToString().Should().StartWith("1/4 = 0.25 [0.0");
            Estimate.Of(0.25, new Interval(0.1, 0.5), "wilson", 0.95).ToString().Should().Be("0.25 [0.1, 0.5] (wilson)");
        }
        finally
        {
            Thread.CurrentThread.CurrentCulture = before;
        }
    }
}
