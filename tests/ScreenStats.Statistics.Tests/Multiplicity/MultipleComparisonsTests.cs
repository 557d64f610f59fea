using ScreenStats.Statistics.Comparison;
using ScreenStats.Statistics.Multiplicity;

namespace ScreenStats.Statistics.Tests.Multiplicity;

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
    public void Each_method_has_at_least_fifty_independent_rows()
    {
        foreach (var method in AdjustmentMethods.All)
        {
            ReferenceTable.Load("adjusted-p-values").Count(row => row.Kind == "independent" && row.Text("method") == method.Name())
                .Should().BeGreaterThanOrEqualTo(50, method.Name());
        }
    }

    [Fact]
    public void Adjusted_values_are_ordered_as_the_raw_ones_and_between_them_and_one() => PValues.Sample(p =>
    {
        foreach (var method in AdjustmentMethods.All)
        {
            var adjusted = MultipleComparisons.Adjust(method, p);
            for (var i = 0; i < p.Length; i++)
            {
                if (!(p[i] <= adjusted[i] + 1e-15 && adjusted[i] <= 1)) return false;
                for (var j = 0; j < p.Length; j++)
                {
                    if (p[i] <= p[j] && adjusted[i] > adjusted[j] + 1e-15) return false;
                }
            }
        }

        return true;
    });

    [Fact]
    public void Each_method_is_never_worse_than_the_ones_it_improves_on() => PValues.Sample(p =>
    {
        bool AtMost(IReadOnlyList<double> better, IReadOnlyList<double> worse) => better.Zip(worse).All(pair => pair.First <= pair.Second + 1e-14);
        return AtMost(MultipleComparisons.Holm(p), MultipleComparisons.Bonferroni(p)) && AtMost(MultipleComparisons.Hochberg(p), MultipleComparisons.Holm(p))
            && AtMost(MultipleComparisons.Hommel(p), MultipleComparisons.Hochberg(p)) && AtMost(MultipleComparisons.BenjaminiHochberg(p), MultipleComparisons.Hommel(p))
            && AtMost(MultipleComparisons.BenjaminiHochberg(p), MultipleComparisons.BenjaminiYekutieli(p));
    });

    // Hommel 1988 as it is defined: a comparison is rejected where Simes rejects every set that holds it. All sets, one by one.
    [Fact]
    public void Hommel_is_the_largest_Simes_value_of_all_sets_that_hold_the_comparison() =>
        Gen.OneOf(Gen.Double[0, 1], Gen.Double[0, 0.1], Gen.Int[0, 4].Select(i => i / 20.0)).Array[1, 9].Sample(p =>
        {
            var expected = new double[p.Length];
            for (var set = 1; set < 1 << p.Length; set++)
            {
                var members = Enumerable.Range(0, p.Length).Where(i => (set >> i & 1) == 1).ToList();
                var simes = members.Select(i => p[i]).Order().Select((value, rank) => members.Count * value / (rank + 1)).Min();
                foreach (var i in members) expected[i] = Math.Max(expected[i], Math.Min(1, simes));
            }

            return MultipleComparisons.Hommel(p).Zip(expected).All(pair => Math.Abs(pair.First - pair.Second) < 1e-14);
        });

    // Holm 1979: a comparison is rejected where Bonferroni rejects every set that holds it.
    [Fact]
    public void Holm_is_the_largest_Bonferroni_value_of_all_sets_that_hold_the_comparison() =>
        Gen.OneOf(Gen.Double[0, 1], Gen.Double[0, 0.1]).Array[1, 8].Sample(p =>
        {
            var expected = new double[p.Length];
            for (var set = 1; set < 1 << p.Length; set++)
            {
                var members = Enumerable.Range(0, p.Length).Where(i => (set >> i & 1) == 1).ToList();
                var smallest = Math.Min(1, members.Count * members.Min(i => p[i]));
                foreach (var i in members) expected[i] = Math.Max(expected[i], smallest);
            }

            return MultipleComparisons.Holm(p).Zip(expected).All(pair => Math.Abs(pair.First - pair.Second) < 1e-14);
        });

    [Fact]
    public void The_order_of_the_input_does_not_matter() => PValues.Sample(p =>
        AdjustmentMethods.All.All(method => MultipleComparisons.Adjust(method, [.. p.Reverse()]).Reverse().SequenceEqual(MultipleComparisons.Adjust(method, p))));

    [Fact]
    public void Each_named_method_is_the_method_of_its_name()
    {
        double[] p = [0.01, 0.02, 0.03, 0.04, 0.9];
        MultipleComparisons.Adjust(AdjustmentMethod.Bonferroni, p).Should().Equal(MultipleComparisons.Bonferroni(p));
        MultipleComparisons.Adjust(AdjustmentMethod.Holm, p).Should().Equal(MultipleComparisons.Holm(p));
        MultipleComparisons.Adjust(AdjustmentMethod.Hochberg, p).Should().Equal(MultipleComparisons.Hochberg(p));
        MultipleComparisons.Adjust(AdjustmentMethod.Hommel, p).Should().Equal(MultipleComparisons.Hommel(p));
        MultipleComparisons.Adjust(AdjustmentMethod.BenjaminiHochberg, p).Should().Equal(MultipleComparisons.BenjaminiHochberg(p));
        MultipleComparisons.Adjust(AdjustmentMethod.BenjaminiYekutieli, p).Should().Equal(MultipleComparisons.BenjaminiYekutieli(p));
        AdjustmentMethods.All.Select(method => method.Controls()).Should().OnlyContain(words => words.Length > 10);
    }

    [Theory]
    [InlineData(-0.1)]
    [InlineData(1.1)]
    [InlineData(double.NaN)]
    public void A_figure_that_is_no_probability_is_refused(double p)
    {
        foreach (var method in AdjustmentMethods.All)
            FluentActions.Invoking(() => MultipleComparisons.Adjust(method, [0.5, p])).Should().Throw<ArgumentOutOfRangeException>();
    }

    private static IReadOnlyList<double> Adjust(string method, IReadOnlyList<double> p) =>
        MultipleComparisons.Adjust(AdjustmentMethods.All.Single(one => one.Name() == method), p);
}
