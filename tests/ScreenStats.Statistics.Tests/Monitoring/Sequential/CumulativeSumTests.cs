using ScreenStats.Statistics.Monitoring.Sequential.CumulativeSums;

namespace ScreenStats.Statistics.Tests.Monitoring.Sequential;

public sealed class CumulativeSumTests
{
    private static readonly Gen<double[]> Increments = Gen.OneOf(Gen.Double[-2, 2], Gen.Int[-2, 2].Select(i => (double)i)).Array[1, 200];

    [Fact]
    public void Every_row_of_the_reference_table_is_met() => Mismatches.ShouldBeNone(ReferenceTable.Load("cumulative-sum-paths"), row =>
    {
        var sign = row.Text("side") == "up" ? 1 : -1;
        var path = CumulativeSum.Path(
            [.. row.Numbers("values").Select(x => (sign * (x - row.Number("target"))) - row.Number("reference"))], row.Number("limit"));
        var first = path.Signals.Count == 0 ? "none" : (path.Signals[0].Index + 1).ToString(System.Globalization.CultureInfo.InvariantCulture);
        return row.Numbers("statistics").Select((expected, i) => row.Within(expected, path.Points[i].Statistic) ? null : $"{row} {i}: {path.Points[i].Statistic}, not {expected}")
            .Append(first == row.Text("first_signal") ? null : $"{row}: first signal {first}");
    });

    // Page 1954: the sum is how far the plain cumulative sum lies above its lowest value so far.
    [Fact]
    public void The_statistic_is_the_height_above_the_lowest_plain_sum() => Increments.Sample(increments =>
    {
        var path = CumulativeSum.Path(increments, 5);
        double sum = 0, lowest = 0;
        for (var i = 0; i < increments.Length; i++)
        {
            sum += increments[i];
            lowest = Math.Min(lowest, sum);
            if (Math.Abs(path.Points[i].Statistic - (sum - lowest)) > 1e-9) return false;
        }

        return true;
    });

    [Fact]
    public void A_rise_begins_after_the_last_zero_and_a_signal_is_the_first_of_its_row() => Increments.Sample(increments =>
    {
        var path = CumulativeSum.Path(increments, 3);
        return path.Signals.All(signal =>
            path.Points[signal.Index].Signals && (signal.Index == 0 || !path.Points[signal.Index - 1].Signals)
            && (signal.RisingSince == 0 || path.Points[signal.RisingSince - 1].Statistic == 0)
            && Enumerable.Range(signal.RisingSince, signal.Length).All(i => path.Points[i].Statistic > 0))
            && path.Points.Where((point, i) => point.Signals && (i == 0 || !path.Points[i - 1].Signals)).Count() == path.Signals.Count;
    });

    [Fact]
    public void Where_the_floor_is_applied_changes_what_is_drawn_and_no_signal() => Gen.Select(Increments, Gen.Bool).Sample((increments, restart) =>
    {
        var options = new CumulativeSumOptions { HeadStart = 1, AfterSignal = restart ? AfterSignal.Restart : AfterSignal.Continue };
        var after = CumulativeSum.Path(increments, 3, options);
        var before = CumulativeSum.Path(increments, 3, options with { Reset = ResetRule.BeforeAdding });
        return after.Signals.SequenceEqual(before.Signals) && after.Points.Zip(before.Points).All(pair => pair.First.Statistic == Math.Max(0, pair.Second.Statistic));
    });

    [Fact]
    public void At_the_limit_the_two_rules_differ()
    {
        CumulativeSum.Path([1, 1, 1], 3).Signals.Should().ContainSingle().Which.Should().Be(new CumulativeSumSignal(2, 0, 3));
        CumulativeSum.Path([1, 1, 1], 3, new CumulativeSumOptions { Signal = SignalRule.Above }).Signals.Should().BeEmpty();
    }

    [Fact]
    public void After_a_restart_the_sum_begins_at_its_head_start()
    {
        var path = CumulativeSum.Path([2, 2, 1], 3, new CumulativeSumOptions { HeadStart = 1, AfterSignal = AfterSignal.Restart });
        path.Points.Select(point => point.Statistic).Should().Equal(3, 3, 2);
        path.Signals.Select(signal => (signal.Index, signal.RisingSince)).Should().Equal((0, 0), (1, 1));
    }

    [Fact]
    public void Figures_outside_their_domain_are_refused()
    {
        FluentActions.Invoking(() => CumulativeSum.Path([1], 0)).Should().Throw<ArgumentOutOfRangeException>();
        FluentActions.Invoking(() => CumulativeSum.Path([double.NaN], 1)).Should().Throw<ArgumentOutOfRangeException>();
        FluentActions.Invoking(() => CumulativeSum.Path([1], 1, new CumulativeSumOptions { HeadStart = 1 })).Should().Throw<ArgumentOutOfRangeException>();
        FluentActions.Invoking(() => CumulativeSum.Path([1], 1, new CumulativeSumOptions { HeadStart = -1 })).Should().Throw<ArgumentOutOfRangeException>();
        FluentActions.Invoking(() => FalseAlarmTarget.OnceInRuns(0)).Should().Throw<ArgumentOutOfRangeException>();
        FluentActions.Invoking(() => FalseAlarmTarget.OnceInDays(0.5, 1)).Should().Throw<ArgumentOutOfRangeException>();
        FalseAlarmTarget.OnceInDays(30, 400).Runs.Should().Be(12_000);
    }
}
