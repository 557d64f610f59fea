using ScreenStats.Cli.Parsing;

namespace ScreenStats.Cli.Tests.Parsing;

public sealed class FiguresTests
{
    [Theory]
    [InlineData("0.93", 0.93)]
    [InlineData("0", 0)]
    [InlineData("1", 1)]
    [InlineData(".5", 0.5)]
    [InlineData("1e-3", 0.001)]
    [InlineData("98/134", 98.0 / 134)]
    [InlineData("0/20", 0)]
    public void A_probability_is_a_fraction_or_counts(string text, double value) =>
        Figures.Probability("--sensitivity", text).Value.Should().Be(value);

    [Theory]
    [InlineData("0,93", "write 0.93")]
    [InlineData("93%", "write 0.93")]
    [InlineData("93 %", "write 0.93")]
    [InlineData("99,5%", "write 0.995")]
    [InlineData("93", "write 0.93")]
    [InlineData("1.2", "no fraction from 0 to 1")]
    [InlineData("-0.1", "no fraction from 0 to 1")]
    [InlineData("NaN", "not a fraction")]
    [InlineData("1e400", "not a fraction")]
    [InlineData("Infinity", "not a fraction")]
    [InlineData("", "not a fraction")]
    [InlineData("high", "not a fraction")]
    [InlineData("5/3", "more successes than trials")]
    [InlineData("-1/10", "cannot be negative")]
    [InlineData("1/-10", "cannot be negative")]
    [InlineData("1/2/3", "not counts")]
    [InlineData("1.5/3", "not counts")]
    [InlineData("1,000/3,000", "without separators")]
    [InlineData("1 / 3", "without separators or spaces")]
    [InlineData("1/99999999999999999999", "larger than this program can hold")]
    public void An_impossible_or_foreign_probability_is_refused_with_advice(string text, string advice) =>
        FluentActions.Invoking(() => Figures.Probability("--sensitivity", text))
            .Should().Throw<UsageException>().Which.Message.Should().StartWith("--sensitivity").And.Contain(advice);

    [Fact]
    public void A_value_with_its_interval_carries_both()
    {
        var figure = Figures.Probability("--sensitivity", "0.73[0.65,0.80]");
        figure.Value.Should().Be(0.73);
        figure.Limits!.Value.Lower.Should().Be(0.65);
        figure.Statement!.Matched.Should().NotBeNull();
        figure.Shown.Should().Be("0.73 (0.65 to 0.8)");
    }

    [Theory]
    [InlineData("0.73[0.65,0.80", "0.73[0.65,0.80]")]
    [InlineData("[0.65,0.80]", "0.73[0.65,0.80]")]
    [InlineData("0.73]", "0.73[0.65,0.80]")]
    [InlineData("0.73[0.65]", "two limits")]
    [InlineData("0,73[0,65,0,80]", "two limits")]
    [InlineData("0.73[0.80,0.65]", "lower limit first")]
    [InlineData("0.63[0.65,0.80]", "lower limit first")]
    [InlineData("0.73[65%,80%]", "write 0.65")]
    [InlineData("0.73[0.65,1.2]", "no fraction from 0 to 1")]
    public void An_interval_that_is_none_is_refused_with_advice(string text, string advice) =>
        FluentActions.Invoking(() => Figures.Probability("--sensitivity", text))
            .Should().Throw<UsageException>().Which.Message.Should().StartWith("--sensitivity").And.Contain(advice);

    [Fact]
    public void Zero_of_zero_is_legal_and_has_no_value() => Figures.Probability("--sensitivity", "0/0").Value.Should().BeNull();

    [Theory]
    [InlineData("0")]
    [InlineData("1")]
    [InlineData("95")]
    [InlineData("0,95")]
    public void A_confidence_outside_its_open_interval_is_refused(string text) =>
        FluentActions.Invoking(() => Figures.Confidence("--confidence", text))
            .Should().Throw<UsageException>().WithMessage("*0.95*");

    [Fact]
    public void A_list_is_separated_by_commas_and_has_decimal_points() => Figures.List("--days", "1,2,3.5").Should().Equal(1, 2, 3.5);

    [Theory]
    [InlineData("1,,2")]
    [InlineData("1;2")]
    [InlineData("1,NaN")]
    public void A_list_that_is_none_is_refused(string text) =>
        FluentActions.Invoking(() => Figures.List("--days", text)).Should().Throw<UsageException>().WithMessage("*1,2,3.5*");

    [Theory]
    [InlineData("31.03.2026")]
    [InlineData("2026-02-30")]
    public void A_day_that_is_none_is_refused(string text) =>
        FluentActions.Invoking(() => Figures.Day("--as-of", text)).Should().Throw<UsageException>().WithMessage("*2026-03-31*");
}
