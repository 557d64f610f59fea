using System.Globalization;
using ScreenStats.Statistics.Heterogeneity;

namespace ScreenStats.Statistics.Tests.Heterogeneity;

public sealed class ExactTableTests
{
    private static readonly Gen<long[][]> Tables = Gen.Long[0, 6].Array[2, 4].Select(row => row.Length).SelectMany(columns => Gen.Long[0, 5].Array[columns].Array[2, 4]);

    [Fact]
    public void Every_row_of_the_reference_table_is_met() => Mismatches.ShouldBeNone(ReferenceTable.Load("exact-tables"), row =>
    {
        var result = ExactTable.Test(Read(row.Text("table")));
        return [row.Mismatch("p_value", result.PValue), result.Method == ExactHomogeneityMethod.Network ? null : $"{row}: tables were drawn"];
    });

    [Fact]
    public void The_table_has_at_least_fifty_independent_rows() =>
        ReferenceTable.Load("exact-tables").Count(row => row.Kind == "independent").Should().BeGreaterThanOrEqualTo(50);

    [Fact]
    public void Rows_and_columns_may_change_places_and_order_and_two_columns_give_the_test_of_groups() => Tables.Sample(table =>
    {
        var result = ExactTable.Test(table);
        long[][] turned = [.. Enumerable.Range(0, table[0].Length).Reverse().Select(j => table.Select(row => row[j]).ToArray())];
        var other = ExactTable.Test(turned);
        other.Reason.Should().Be(result.Reason);
        if (result.PValue is not { } p) return;
        other.PValue!.Value.Should().BeApproximately(p, 1e-9);
        p.Should().BeInRange(0, 1);
        if (result.Columns == 2 && table[0].Length == 2)
            ExactHomogeneity.Test([.. table.Select(row => new GroupCount(row[0], row[0] + row[1]))]).PValue!.Value.Should().BeApproximately(p, 1e-9);
    }, iter: 100);

    [Fact]
    public void Random_tables_agree_with_the_sum_of_all_within_four_standard_errors_and_repeat_with_their_seed()
    {
        var table = Read("1 3 10 6;2 3 10 7;1 6 14 12;0 1 9 11");
        var options = new ExactHomogeneityOptions { MostPartialTables = 0, Replicates = 20_000, Seed = 3 };
        var drawn = ExactTable.Test(table, options);
        drawn.Method.Should().Be(ExactHomogeneityMethod.MonteCarlo);
        drawn.PValue!.Value.Should().BeApproximately(0.78268493896564, 4 * drawn.StandardError!.Value);
        ExactTable.Test(table, options).Should().Be(drawn);
    }

    [Fact]
    public void What_cannot_be_told_says_why_and_figures_outside_their_domain_are_refused()
    {
        ExactTable.Test([]).Reason.Should().Be(UndefinedReason.NoTrials);
        ExactTable.Test([[0, 0], [0, 0]]).Reason.Should().Be(UndefinedReason.NoTrials);
        ExactTable.Test([[1, 2], [0, 0]]).Reason.Should().Be(UndefinedReason.FewerThanTwoGroups);
        ExactTable.Test([[1, 0], [5, 0]]).Reason.Should().Be(UndefinedReason.FewerThanTwoGroups);
        FluentActions.Invoking(() => ExactTable.Test([[1, 2], [1]])).Should().Throw<ArgumentException>();
        FluentActions.Invoking(() => ExactTable.Test([[1, -2], [1, 1]])).Should().Throw<ArgumentOutOfRangeException>();
        FluentActions.Invoking(() => ExactTable.Test([[long.MaxValue, 2], [1, 1]])).Should().Throw<ArgumentOutOfRangeException>();
    }

    private static long[][] Read(string text) => [.. text.Split(';').Select(row => row.Split(' ').Select(count => long.Parse(count, CultureInfo.InvariantCulture)).ToArray())];
}
