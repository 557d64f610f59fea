using ScreenStats.Statistics.Monitoring.Runs;

namespace ScreenStats.Statistics.Tests.Monitoring.Runs;

public sealed class RunsAndCrossingsTests
{
    [Fact]
    public void Every_row_of_the_reference_table_is_met() => Mismatches.ShouldBeNone(ReferenceTable.Load("runs-and-crossings"), row =>
    {
        if (!row.Has("values"))
        {
            var chances = RunsAndCrossings.Chances((int)row.Count("useful"));
            return
            [
                row.Mismatch("longest_limit", chances.LongestRunLimit), row.Mismatch("crossings_limit", chances.CrossingsLimit), row.Mismatch("long_run", chances.LongRun),
                row.Mismatch("few_crossings", chances.FewCrossings), row.Mismatch("either", chances.Either),
            ];
        }

        var found = RunsAndCrossings.Of(row.Numbers("values"));
        return
        [
            row.Mismatch("useful", found.Useful), row.Mismatch("longest_run", found.LongestRun), row.Mismatch("crossings", found.Crossings), row.Mismatch("centre_line", found.Centre),
            row.Mismatch("longest_limit", found.LongestRunLimit), row.Mismatch("crossings_limit", found.CrossingsLimit),
        ];
    });

    [Fact]
    public void The_chances_are_those_of_all_rows_of_coins_counted_one_by_one()
    {
        for (var n = 1; n <= 14; n++)
        {
            var chances = RunsAndCrossings.Chances(n);
            double longRun = 0, few = 0, either = 0;
            for (var coins = 0; coins < 1 << n; coins++)
            {
                var found = RunsAndCrossings.Of(Enumerable.Range(0, n).Select(i => (coins >> i & 1) - 0.5), 0);
                var (l, c) = n == 1 ? (1, 0) : (found.LongestRun!.Value, found.Crossings!.Value);
                if (l > chances.LongestRunLimit) longRun++;
                if (c < chances.CrossingsLimit) few++;
                if (l > chances.LongestRunLimit || c < chances.CrossingsLimit) either++;
            }

            chances.LongRun.Should().BeApproximately(longRun / (1 << n), 1e-14, "of {0} points", n);
            chances.FewCrossings.Should().BeApproximately(few / (1 << n), 1e-14, "of {0} points", n);
            chances.Either.Should().BeApproximately(either / (1 << n), 1e-14, "of {0} points", n);
        }
    }

    [Fact]
    public void Five_thousand_points_are_no_trouble_and_more_have_limits_but_no_chances()
    {
        RunsAndCrossings.Chances(RunsAndCrossings.MostPoints).Either.Should().BeInRange(0.11, 0.12);
        var found = RunsAndCrossings.Of(Enumerable.Range(0, 5001).Select(i => i % 2 - 0.5), 0);
        found.Chances.Should().BeNull();
        found.LongestRunLimit.Should().Be(15);
        new Action(() => RunsAndCrossings.Chances(5001)).Should().Throw<ArgumentOutOfRangeException>();
        new Action(() => RunsAndCrossings.Chances(0)).Should().Throw<ArgumentOutOfRangeException>();
    }

    [Fact]
    public void Turning_values_upside_down_or_around_or_stretching_them_changes_nothing() => Gen.Int[-20, 20].Array[2, 40].Sample(values =>
    {
        var found = RunsAndCrossings.Of(values.Select(value => (double)value));
        var key = (found.Useful, found.LongestRun, found.Crossings, found.Signal, found.Reason);
        return new[] { values.Select(value => -3.0 * value), values.Reverse().Select(value => (double)value), values.Select(value => value + 7.5) }
            .Select(other => RunsAndCrossings.Of(other)).All(other => (other.Useful, other.LongestRun, other.Crossings, other.Signal, other.Reason) == key);
    });

    [Fact]
    public void The_strict_form_holds_at_thirteen_points()
    {
        // Seven in a row are not enough, eight are; as printed in the paper, and other than in a popular account.
        double[] seven = [1, 1, 1, 1, 1, 1, 1, -1, -1, 1, -1, -1, -1];
        double[] eight = [1, 1, 1, 1, 1, 1, 1, 1, -1, 1, -1, -1, -1];
        RunsAndCrossings.Of(seven, 0).LongRunSignal.Should().BeFalse();
        RunsAndCrossings.Of(eight, 0).LongRunSignal.Should().BeTrue();
    }

    [Fact]
    public void What_cannot_be_judged_says_why()
    {
        RunsAndCrossings.Of([]).Reason.Should().Be(UndefinedReason.NoPoints);
        RunsAndCrossings.Of([3]).Reason.Should().Be(UndefinedReason.FewerThanTwoPoints);
        RunsAndCrossings.Of([3, 3, 3]).Reason.Should().Be(UndefinedReason.PointsOnTheMedian);
        RunsAndCrossings.Of([0, 0, 0, 0, 0, 0, 1, 2, 0, 1]).Reason.Should().Be(UndefinedReason.PointsOnOneSideOfTheMedian);
        RunsAndCrossings.Of([0, 0, 0, 0, 0, 0, 1, 2, 0, 1]).Signal.Should().BeFalse();
        RunsAndCrossings.Of([1, 2, 1, 2, 1, 2, 3, 4, 5], 0).LongRunSignal.Should().BeTrue("a centre given beforehand may have everything on one side");
        new Action(() => RunsAndCrossings.Of([1, double.NaN])).Should().Throw<ArgumentOutOfRangeException>();
        new Action(() => RunsAndCrossings.Of([1, 2], double.NaN)).Should().Throw<ArgumentOutOfRangeException>();
    }
}
