using ScreenStats.Statistics.Comparison;

namespace ScreenStats.Statistics.Tests.Comparison;

public sealed class MultipleComparisonsTests
{
    private static readonly Gen<double[]> PValues = Gen.OneOf(Gen.Double[0, 1], Gen.Double[0, 0.05], Gen.Int[0, 5].Select(i => i / 5.0)).Array[0, 30];

    [Fact]
    public void Every_row_of_the_reference_table_is_met() =>
        Mismatches.ShouldBeNone(ReferenceTable.Load("adjusted-p-values"), row =>
        {
            var expected = row.Numbers("expected");
            var actual = Adjust(row.Text("method"), row.Numbers("p_values"));
            return actual.Zip(expected).Select((pair, i) => row.Within(pair.Second, pair.First) ? null : $"{row} value {i}: {pair.Second}, not {pair.First}")
                .Append(actual.Count == expected.Count ? null : $"{row}: other number of values");
        });

    [Fact]
    public void As_many_are_rejected_as_the_sources_say() =>
        Mismatches.ShouldBeNone(ReferenceTable.Load("rejections"), row =>
            [row.Mismatch("expected", Adjust(row.Text("method"), row.Numbers("p_values")).Count(p => p <= row.Number("level")))]);

    [Fact]
    public void Adjusted_values_are_ordered_as_the_raw_ones_and_between_them_and_one() => PValues.Sample(p =>
    {
        var holm = MultipleComparisons.Holm(p);
        var step = MultipleComparisons.BenjaminiHochberg(p);
        var bonferroni = MultipleComparisons.Bonferroni(p);
        for (var i = 0; i < p.Length; i++)
        {
            if (!(p[i] <= step[i] + 1e-15 && step[i] <= holm[i] + 1e-15 && holm[i] <= bonferroni[i] && bonferroni[i] <= 1)) return false;
            for (var j = 0; j < p.Length; j++)
            {
                if (p[i] <= p[j] && (holm[i] > holm[j] || step[i] > step[j])) return false;
            }
        }

        return true;
    });

    [Fact]
    public void The_order_of_the_input_does_not_matter() => PValues.Sample(p =>
        MultipleComparisons.Holm([.. p.Reverse()]).Reverse().SequenceEqual(MultipleComparisons.Holm(p))
        && MultipleComparisons.BenjaminiHochberg([.. p.Reverse()]).Reverse().SequenceEqual(MultipleComparisons.BenjaminiHochberg(p)));

    [Theory]
    [InlineData(-0.1)]
    [InlineData(1.1)]
    [InlineData(double.NaN)]
    public void A_figure_that_is_no_probability_is_refused(double p)
    {
        foreach (var call in new Action[] { () => MultipleComparisons.Holm([0.5, p]), () => MultipleComparisons.BenjaminiHochberg([p]), () => MultipleComparisons.Bonferroni([p]) })
            call.Should().Throw<ArgumentOutOfRangeException>();
    }

    private static IReadOnlyList<double> Adjust(string method, IReadOnlyList<double> p) => method switch
    {
        "bonferroni" => MultipleComparisons.Bonferroni(p),
        "holm" => MultipleComparisons.Holm(p),
        _ => MultipleComparisons.BenjaminiHochberg(p),
    };
}
