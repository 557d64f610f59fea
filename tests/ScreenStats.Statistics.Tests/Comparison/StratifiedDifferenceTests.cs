using CsCheck;
using ScreenStats.Statistics.Comparison;

namespace ScreenStats.Statistics.Tests.Comparison;

public sealed class StratifiedDifferenceTests
{
    private static readonly Gen<(long, long, long, long)[]> Strata =
        (from n1 in Gen.Long[0, 400]
         from x1 in Gen.Long[0, n1]
         from n2 in Gen.Long[0, 400]
         from x2 in Gen.Long[0, n2]
         select (x1, n1, x2, n2)).Array[1, 12];

    [Fact]
    public void Every_row_of_the_reference_table_is_met() =>
        Mismatches.ShouldBeNone(ReferenceTable.Load("stratified-differences"), row =>
        {
            var result = StratifiedDifference.MantelHaenszel(row.Text("strata").Split(' ').Select(Stratum), row.Number("confidence"));
            return [row.Mismatch("estimate", result.Value), row.Mismatch("lower", result.Lower), row.Mismatch("upper", result.Upper)];
        });

    [Fact]
    public void One_stratum_gives_the_plain_difference() =>
        StratifiedDifference.MantelHaenszel([(56, 70, 48, 80)]).Value.Should().BeApproximately((56 / 70.0) - (48 / 80.0), 1e-15);

    [Fact]
    public void Where_the_groups_never_meet_there_is_no_difference_and_it_says_why()
    {
        var result = StratifiedDifference.MantelHaenszel([(1, 10, 0, 0), (0, 0, 2, 10)]);
        result.IsDefined.Should().BeFalse();
        result.Reason.Should().Be(UndefinedReason.NoSharedStratum);
        StratifiedDifference.MantelHaenszel([]).Reason.Should().Be(UndefinedReason.NoSharedStratum);
    }

    [Fact]
    public void Without_any_event_there_is_a_value_and_no_limits()
    {
        var result = StratifiedDifference.MantelHaenszel([(0, 10, 0, 20), (0, 5, 0, 5)]);
        result.Value.Should().Be(0);
        result.Interval.Should().BeNull();
    }

    [Fact]
    public void A_confounder_that_explains_the_crude_difference_leaves_none()
    {
        // Both groups have 1 % in the one place and 10 % in the other, but are used there in unlike shares.
        var result = StratifiedDifference.MantelHaenszel([(9, 900, 1, 100), (10, 100, 90, 900)]);
        result.Value.Should().BeApproximately(0, 1e-15);
        result.Interval!.Value.Contains(0).Should().BeTrue();
    }

    [Fact]
    public void Exchanging_the_groups_mirrors_the_interval_and_a_design_effect_widens_it() => Strata.Sample(strata =>
    {
        var one = StratifiedDifference.MantelHaenszel(strata);
        var other = StratifiedDifference.MantelHaenszel(strata.Select(s => (s.Item3, s.Item4, s.Item1, s.Item2)));
        other.IsDefined.Should().Be(one.IsDefined);
        if (one.Value is not { } value) return;
        value.Should().BeInRange(-1, 1);
        other.Value!.Value.Should().BeApproximately(-value, 1e-12);
        if (one.Interval is not { } interval || other.Interval is not { } mirrored) return;
        mirrored.Lower.Should().BeApproximately(-interval.Upper, 1e-9);
        interval.Contains(value).Should().BeTrue();
        StratifiedDifference.MantelHaenszel(strata, 0.95, 2.5).Interval!.Value.Width.Should().BeGreaterThanOrEqualTo(interval.Width);
        StratifiedDifference.MantelHaenszel(strata, 0.99).Interval!.Value.Width.Should().BeGreaterThanOrEqualTo(interval.Width);
    }, iter: 2000);

    [Fact]
    public void Impossible_figures_are_refused()
    {
        FluentActions.Invoking(() => StratifiedDifference.MantelHaenszel([(5, 3, 0, 1)])).Should().Throw<ArgumentOutOfRangeException>();
        FluentActions.Invoking(() => StratifiedDifference.MantelHaenszel([(1, 3, 0, 1)], 1)).Should().Throw<ArgumentOutOfRangeException>();
        FluentActions.Invoking(() => StratifiedDifference.MantelHaenszel([(1, 3, 0, 1)], 0.95, 0.5)).Should().Throw<ArgumentOutOfRangeException>();
    }

    private static (long, long, long, long) Stratum(string text)
    {
        var counts = text.Split('/', ':').Select(part => long.Parse(part, System.Globalization.CultureInfo.InvariantCulture)).ToArray();
        return (counts[0], counts[1], counts[2], counts[3]);
    }
}
