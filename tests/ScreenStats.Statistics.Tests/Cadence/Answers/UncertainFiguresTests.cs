using System.Collections.Immutable;
using ScreenStats.Statistics.Accuracy;
using ScreenStats.Statistics.Cadence.Answers;
using ScreenStats.Statistics.Cadence.Courses;
using ScreenStats.Statistics.Proportions;

namespace ScreenStats.Statistics.Tests.Cadence.Answers;

public sealed class UncertainFiguresTests
{
    [Theory]
    [InlineData(61, 97)]
    [InlineData(1, 900)]
    [InlineData(12, 24_000)]
    [InlineData(2391, 2400)]
    public void One_share_by_counts_has_the_limits_of_jeffreys_whatever_rises_with_it(long successes, long trials)
    {
        var jeffreys = ProportionInterval.Jeffreys(successes, trials, 0.95);
        var limits = UncertainFigures.Limits([AccuracyStatement.FromCounts(successes, trials)], 4000, 1, 0.95, values => [values[0], Math.Sqrt(values[0]!.Value), 1 - values[0]]);

        limits[0]!.Value.Lower.Should().BeApproximately(jeffreys.Lower!.Value, 1e-3 * jeffreys.Lower.Value);
        limits[0]!.Value.Upper.Should().BeApproximately(jeffreys.Upper!.Value, 1e-3 * jeffreys.Upper.Value);
        limits[1]!.Value.Lower.Should().BeApproximately(Math.Sqrt(limits[0]!.Value.Lower), 1e-6);
        limits[2]!.Value.Upper.Should().BeApproximately(1 - limits[0]!.Value.Lower, 1e-12);
    }

    [Fact]
    public void An_interval_comes_back_as_it_was_stated()
    {
        var limits = UncertainFigures.Limits([AccuracyStatement.FromInterval(0.73, 0.65, 0.80)], 4000, 1, 0.95, values => values)[0]!.Value;
        limits.Lower.Should().BeApproximately(0.65, 5e-3);
        limits.Upper.Should().BeApproximately(0.80, 5e-3);
        limits.Width.Should().BeApproximately(0.15, 2e-4, "the matched distribution is as wide as what was stated");
    }

    // Of two independent uniform shares the sum has a triangular distribution: its 2.5 % quantile is sqrt(2 * 0.025). Closed form.
    [Fact]
    public void Two_shares_are_put_together_independently()
    {
        var uniform = AccuracyStatement.FromInterval(0.5, 0.025, 0.975);
        var limits = UncertainFigures.Limits([uniform, uniform], 20_000, 3, 0.95, values => [values[0] + values[1]])[0]!.Value;
        limits.Lower.Should().BeApproximately(Math.Sqrt(0.05), 0.006);
        limits.Upper.Should().BeApproximately(2 - Math.Sqrt(0.05), 0.006);
    }

    [Fact]
    public void The_same_seed_gives_the_same_limits_and_another_others_that_hardly_differ()
    {
        ImmutableArray<AccuracyStatement?> shares = [AccuracyStatement.FromCounts(61, 97), AccuracyStatement.FromCounts(995, 1000), null];
        Interval Of(ulong seed) => UncertainFigures.Limits(shares, 2000, seed, 0.95, values => [values[0] * (1 - values[1])])[0]!.Value;
        Of(1).Should().Be(Of(1));
        Of(2).Should().NotBe(Of(1));
        Of(2).Upper.Should().BeApproximately(Of(1).Upper, 0.05 * Of(1).Upper);
    }

    [Fact]
    public void Exact_shares_give_no_limits_and_an_undefined_figure_has_none()
    {
        UncertainFigures.Limits([AccuracyStatement.Exact(0.6), null], 100, 1, 0.95, values => [values[0]]).Should().ContainSingle().Which.Should().BeNull();
        UncertainFigures.Limits([AccuracyStatement.FromCounts(6, 10)], 100, 1, 0.95, values => [null, values[0] > 0.6 ? values[0] : null]).Should().HaveCount(2).And.OnlyContain(one => one == null);
    }

    [Fact]
    public void Limits_hold_the_figure_also_where_no_event_was_counted()
    {
        var limits = UncertainFigures.Limits([AccuracyStatement.FromCounts(0, 20)], 2000, 1, 0.95, values => values)[0]!.Value;
        limits.Lower.Should().Be(0);
        limits.Upper.Should().BeInRange(0.05, 0.2);
    }

    [Fact]
    public void A_course_with_counts_as_its_sensitivity_has_limits_around_what_it_finds()
    {
        var model = new WindowModel(new Interval(3, 10), new Interval(2, 8));
        ImmutableArray<double?> Figures(ImmutableArray<double?> values) =>
            [CourseComparison.Of(new CourseQuestion { Model = model, Sensitivity = values[0] }, [ScreeningSchedule.Every(7)])[0].Figures.DetectionProbability.Value];
        var limits = UncertainFigures.Limits([AccuracyStatement.FromCounts(61, 97)], 1000, 1, 0.95, Figures)[0]!.Value;
        var jeffreys = ProportionInterval.Jeffreys(61, 97, 0.95);

        // A window as long as the interval: one screen falls into it, so what is found is the sensitivity.
        limits.Lower.Should().BeApproximately(jeffreys.Lower!.Value, 1e-3);
        limits.Upper.Should().BeApproximately(jeffreys.Upper!.Value, 1e-3);
    }

    [Fact]
    public void Figures_outside_their_domain_are_refused()
    {
        FluentActions.Invoking(() => UncertainFigures.Limits([], 10, 1, 0.95, values => values)).Should().Throw<ArgumentOutOfRangeException>();
        FluentActions.Invoking(() => UncertainFigures.Limits([], 1000, 1, 1, values => values)).Should().Throw<ArgumentOutOfRangeException>();
    }
}
