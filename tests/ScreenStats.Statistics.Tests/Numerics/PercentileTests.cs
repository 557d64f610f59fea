using ScreenStats.Statistics.Numerics;

namespace ScreenStats.Statistics.Tests.Numerics;

public sealed class PercentileTests
{
    [Fact]
    public void Every_row_of_the_reference_table_is_met() =>
        Mismatches.ShouldBeNone(ReferenceTable.Load("percentiles"), row =>
        {
            var values = row.Numbers("values");
            return [row.Mismatch("expected", row.Text("measure") == "median"
                ? Percentile.Median(values.Select(v => (v, 1L)))
                : Percentile.NearestRank(values, row.Number("fraction")))];
        });

    [Fact]
    public void Counts_stand_for_repeated_values() =>
        Gen.Select(Gen.Select(Gen.Int[-5, 5], Gen.Long[0, 6]).Array[0, 12], Gen.Double[0.001, 1]).Sample((pairs, fraction) =>
        {
            var weighted = pairs.Select(p => ((double)p.Item1, p.Item2)).ToArray();
            var plain = pairs.SelectMany(p => Enumerable.Repeat((double)p.Item1, (int)p.Item2)).ToArray();
            return Percentile.NearestRank(weighted, fraction) == Percentile.NearestRank(plain, fraction)
                && Percentile.Median(weighted) == Percentile.Median(plain.Select(v => (v, 1L)));
        });

    [Fact]
    public void Nothing_has_no_percentile()
    {
        Percentile.NearestRank(Array.Empty<double>(), 0.5).Should().BeNull();
        Percentile.Median([(3.0, 0L)]).Should().BeNull();
    }

    [Theory]
    [InlineData(0)]
    [InlineData(1.1)]
    [InlineData(double.NaN)]
    public void A_fraction_outside_its_domain_is_refused(double fraction)
    {
        var call = () => Percentile.NearestRank([1.0], fraction);
        call.Should().Throw<ArgumentOutOfRangeException>();
    }
}
