using ScreenStats.Statistics.Proportions;
using ScreenStats.Statistics.Tests.Heterogeneity;
using ScreenStats.Statistics.Trends;
using ScreenStats.Statistics.Trends.MovingWindows;

namespace ScreenStats.Statistics.Tests.Trends.MovingWindows;

public sealed class MovingProportionsTests
{
    private static readonly Gen<TimedCount[]> Drawn = Gen.Select(Gen.Int[0, 300], Gen.Double[0, 1]).Array[0, 20].Select(rows =>
        (TimedCount[])[.. rows.Select((row, i) => new TimedCount(i, Math.Floor(row.Item2 * row.Item1), row.Item1))]);

    [Fact]
    public void Every_row_of_the_reference_table_is_met() => Mismatches.ShouldBeNone(ReferenceTable.Load("moving-proportions"), row =>
    {
        var windows = MovingProportions.Wilson(TrendRows.Read(row.Text("counts")), (int)row.Count("width"));
        return
        [
            .. GroupRows.Mismatches(row, "events", windows.Select(window => (double?)window.Proportion.Successes)), .. GroupRows.Mismatches(row, "trials", windows.Select(window => (double?)window.Proportion.Trials)),
            .. GroupRows.Mismatches(row, "lower", windows.Select(window => window.Proportion.Lower)), .. GroupRows.Mismatches(row, "upper", windows.Select(window => window.Proportion.Upper)),
        ];
    });

    [Fact]
    public void A_window_is_the_proportion_of_its_periods_and_those_without_tests_count_as_periods() => Gen.Select(Drawn, Gen.Int[1, 6]).Sample((counts, width) =>
    {
        var windows = MovingProportions.Wilson(counts, width, 0.9);
        windows.Should().HaveCount(Math.Max(0, counts.Length - width + 1));
        foreach (var window in windows)
        {
            (window.Last - window.First).Should().Be(width - 1);
            var part = counts[window.First..(window.Last + 1)];
            window.Proportion.Interval.Should().Be(ProportionInterval.Wilson(part.Sum(count => count.Events), part.Sum(count => count.Trials), 0.9).Interval);
        }
    }, iter: 100);

    [Fact]
    public void Nothing_tested_in_a_window_is_undefined_and_a_window_longer_than_the_series_is_none()
    {
        MovingProportions.Wilson([new(1, 0, 0), new(2, 0, 0)], 2)[0].Proportion.Reason.Should().Be(UndefinedReason.NoTrials);
        MovingProportions.Wilson([new(1, 1, 5)], 2).Should().BeEmpty();
        FluentActions.Invoking(() => MovingProportions.Wilson([new(2, 1, 5), new(1, 1, 5)], 1)).Should().Throw<ArgumentException>();
        FluentActions.Invoking(() => MovingProportions.Wilson([], 0)).Should().Throw<ArgumentOutOfRangeException>();
        FluentActions.Invoking(() => MovingProportions.Wilson([], 1, 1)).Should().Throw<ArgumentOutOfRangeException>();
        FluentActions.Invoking(() => new TimedCount(double.NaN, 0, 0)).Should().Throw<ArgumentOutOfRangeException>();
        FluentActions.Invoking(() => new TimedCount(0, 2, 1)).Should().Throw<ArgumentOutOfRangeException>();
    }
}
