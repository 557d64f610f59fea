using ScreenStats.Statistics.Cadence.Courses;
using ScreenStats.Statistics.Cadence.Intervals;
using ScreenStats.Statistics.Cadence.Windows;

namespace ScreenStats.Statistics.Tests.Cadence.Windows;

public class MixtureTests
{
    private static readonly ScreeningSchedule Often = ScreeningSchedule.Observed([new ObservedGap(2, 30), new ObservedGap(5, 10)]);
    private static readonly ScreeningSchedule Seldom = ScreeningSchedule.Observed([new ObservedGap(7, 12), new ObservedGap(14, 3)]);
    private static readonly WindowCourse Course = new(new InfectionWindows(2, 12, 3, 9), 0.6, new SymptomOnset(0.4, 4, 0.3, 1), 0.5, 0.2);

    [Theory]
    [InlineData(1, 0)]
    [InlineData(3, 1)]
    [InlineData(0, 5)]
    public void Of_parts_with_schedules_of_their_own_what_is_found_is_the_weighted_mean(double often, double seldom)
    {
        var (one, other) = (ScreenCounts.Of(Often, 20), ScreenCounts.Of(Seldom, 20));
        var mixed = Course.Of(ScreenCounts.Mixture([(often, one), (seldom, other)]), 0.8);
        var (first, second) = (Course.Of(one, 0.8), Course.Of(other, 0.8));
        double Mean(double a, double b) => ((often * a) + (seldom * b)) / (often + seldom);
        mixed.Detection.Should().BeApproximately(Mean(first.Detection, second.Detection), 1e-12);
        mixed.FractionRemoved.Should().BeApproximately(Mean(first.FractionRemoved, second.FractionRemoved), 1e-12);
        mixed.CaughtBeforeInfectious.Should().BeApproximately(Mean(first.CaughtBeforeInfectious, second.CaughtBeforeInfectious), 1e-12);
    }

    [Fact]
    public void The_exposure_of_programs_together_is_the_sum_of_theirs()
    {
        var (one, other, none) = (EarlierScreens.Of(40, Often.Gaps, 12), EarlierScreens.Of(90, Seldom.Gaps, 12), EarlierScreens.Of(0, [], 12));
        var together = EarlierScreens.Together([one, none, other]);
        together.Screens.Should().Be(one.Screens + other.Screens);
        Course.Exposure(together).Should().BeApproximately(Course.Exposure(one) + Course.Exposure(other), 1e-9);
        Course.Exposure(EarlierScreens.Together([none, none])).Should().Be(0);
    }

    [Fact]
    public void What_cannot_be_put_together_is_refused()
    {
        var counts = ScreenCounts.Of(Often, 20);
        FluentActions.Invoking(() => ScreenCounts.Mixture([])).Should().Throw<ArgumentException>();
        FluentActions.Invoking(() => ScreenCounts.Mixture([(0, counts)])).Should().Throw<ArgumentException>();
        FluentActions.Invoking(() => ScreenCounts.Mixture([(-1, counts), (2, counts)])).Should().Throw<ArgumentException>();
        FluentActions.Invoking(() => ScreenCounts.Mixture([(1, counts), (1, ScreenCounts.Of(Often, 30))])).Should().Throw<ArgumentException>();
        FluentActions.Invoking(() => ScreenCounts.Mixture([(1, counts), (1, ScreenCounts.Of(ScreeningSchedule.Every(3.3), 20))])).Should().Throw<ArgumentException>();
        FluentActions.Invoking(() => EarlierScreens.Together([])).Should().Throw<ArgumentException>();
        FluentActions.Invoking(() => EarlierScreens.Together([EarlierScreens.Of(1, [], 5), EarlierScreens.Of(1, [], 9)])).Should().Throw<ArgumentException>();
    }
}
