using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Tests;

public sealed class RoundingTests
{
    [Theory]
    [InlineData(0.99957, "99.957 %")]
    [InlineData(1, "100 %")]
    [InlineData(0.0012345, "0.123 %")]
    [InlineData(1.115248, "112 %")]
    [InlineData(6896.7252, "689,673 %")]
    [InlineData(-0.0602, "-6.02 %")]
    public void A_share_keeps_what_tells_it_from_a_whole_and_growth_beyond_a_whole_keeps_three_digits(double value, string text) =>
        Rounding.Print(Cell.Number(value), Unit.Proportion).Should().Be(text);
}
