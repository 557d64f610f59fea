using ScreenStats.Reporting.Charts.Words;

namespace ScreenStats.Reporting.Tests.Charts;

public class TicksTests
{
    [Theory]
    [InlineData(0.024, "0|0.5 %|1.0 %|1.5 %|2.0 %")]
    [InlineData(1, "0|20 %|40 %|60 %|80 %|100 %")]
    [InlineData(0.00031, "0|0.01 %|0.02 %|0.03 %")]
    [InlineData(0.3, "0|10 %|20 %|30 %")]
    public void Shares_are_labelled_in_per_cent_at_round_places(double to, string labels)
    {
        foreach (var culture in Cultures.Names)
        {
            string.Join('|', Cultures.In(culture, () => Ticks.PerCent(to)).Select(tick => tick.Label)).Should().Be(labels);
        }
    }

    [Fact]
    public void Powers_of_ten_are_labelled_in_per_cent() =>
        Ticks.PowersOfTenPerCent(0.0001, 0.5).Select(tick => tick.Label).Should().Equal("0.01 %", "0.1 %", "1 %", "10 %");

    [Fact]
    public void Half_a_year_is_labelled_by_month() =>
        Cultures.In("tr-TR", () => Ticks.Days(new DateOnly(2025, 11, 3), new DateOnly(2026, 4, 30))).Select(tick => tick.Label)
            .Should().Equal("Dec 2025", "Jan 2026", "Feb", "Mar", "Apr");

    [Fact]
    public void A_few_weeks_are_labelled_by_monday() =>
        Ticks.Days(new DateOnly(2026, 1, 5), new DateOnly(2026, 1, 25)).Select(tick => tick.Label).Should().Equal("5 Jan 2026", "12 Jan", "19 Jan");

    [Fact]
    public void Never_more_than_eight_labels_however_long_the_span()
    {
        for (var days = 1; days < 12_000; days += 37)
        {
            Ticks.Days(new DateOnly(2026, 1, 5), new DateOnly(2026, 1, 5).AddDays(days)).Length.Should().BeInRange(1, 9);
        }
    }
}
