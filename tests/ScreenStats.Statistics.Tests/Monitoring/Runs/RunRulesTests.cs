using ScreenStats.Statistics.Monitoring.Charts;
using ScreenStats.Statistics.Monitoring.Runs;

namespace ScreenStats.Statistics.Tests.Monitoring.Runs;

public sealed class RunRulesTests
{
    [Fact]
    public void Rules_have_names_in_words() =>
        RunRules.All.Select(rule => rule.Name()).Should().Equal("outside-limits", "two-of-three-far", "four-of-five-off", "eight-on-one-side");

    [Fact]
    public void All_rules_are_listed_and_described()
    {
        RunRules.All.Should().Equal(Enum.GetValues<RunRule>());
        RunRules.All.Select(rule => rule.Describe()).Should().OnlyHaveUniqueItems();
        new Action(() => ((RunRule)9).Name()).Should().Throw<ArgumentOutOfRangeException>();
        new Action(() => ((RunRule)9).Describe()).Should().Throw<ArgumentOutOfRangeException>();
    }

    // 100 trials at one half: the standard error is 5 events.
    [Theory]
    [InlineData("50 66", RunRule.OutsideLimits, "1")]
    [InlineData("50 65", RunRule.OutsideLimits, "")]
    [InlineData("61 50 61", RunRule.TwoOfThreeFar, "2")]
    [InlineData("61 50 50 61", RunRule.TwoOfThreeFar, "")]
    [InlineData("61 39 39", RunRule.TwoOfThreeFar, "2")]
    [InlineData("61 61 50 50", RunRule.TwoOfThreeFar, "1")]
    [InlineData("60 60 60", RunRule.TwoOfThreeFar, "")]
    [InlineData("56 56 44 56 56", RunRule.FourOfFiveOff, "4")]
    [InlineData("56 56 44 44 56 56", RunRule.FourOfFiveOff, "")]
    [InlineData("44 44 44 44 44", RunRule.FourOfFiveOff, "3 4")]
    [InlineData("55 55 55 55 55", RunRule.FourOfFiveOff, "")]
    [InlineData("51 51 51 51 51 51 51 51 51", RunRule.EightOnOneSide, "7 8")]
    [InlineData("51 51 51 51 51 51 51 50 51", RunRule.EightOnOneSide, "")]
    [InlineData("49 49 49 49 49 49 49 51", RunRule.EightOnOneSide, "")]
    public void Each_rule_fires_where_its_words_say(string counts, RunRule rule, string fires)
    {
        var chart = ProportionChart.ThreeSigma(counts.Split(' ').Select(count => new Subgroup(long.Parse(count, System.Globalization.CultureInfo.InvariantCulture), 100)), 0.5, [rule]);
        string.Join(' ', chart.Signals.Select(signal => signal.Index)).Should().Be(fires);
    }

    [Fact]
    public void A_signal_says_its_side() =>
        ProportionChart.ThreeSigma([new Subgroup(30, 100), new Subgroup(70, 100)], 0.5).Signals.Select(signal => signal.Side).Should().Equal(ChartSide.Below, ChartSide.Above);
}
