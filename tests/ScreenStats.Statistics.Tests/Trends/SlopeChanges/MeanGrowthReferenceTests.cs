using System.Globalization;
using ScreenStats.Statistics.Trends;
using ScreenStats.Statistics.Trends.SlopeChanges;

namespace ScreenStats.Statistics.Tests.Trends.SlopeChanges;

public sealed class MeanGrowthReferenceTests
{
    [Fact]
    public void Every_mean_growth_of_the_reference_table_is_met() => Mismatches.ShouldBeNone(ReferenceTable.Load("mean-growth"), row =>
    {
        var growth = Fit(row).MeanGrowth(row.Number("from"), row.Number("to"));
        return [row.Mismatch("slope", growth?.Slope), row.Mismatch("standard_error", growth?.StandardError), row.Mismatch("lower", growth?.Interval.Lower), row.Mismatch("upper", growth?.Interval.Upper)];
    });

    [Fact]
    public void Every_profile_limit_of_the_reference_table_is_met() => Mismatches.ShouldBeNone(ReferenceTable.Load("change-limits"), row =>
    {
        var fit = Fit(row);
        return
        [
            .. fit.Changes.Zip(row.Text("lower").Split(' '), (change, wanted) => Mismatch(row, wanted, change.ProfileLower)),
            .. fit.Changes.Zip(row.Text("upper").Split(' '), (change, wanted) => Mismatch(row, wanted, change.ProfileUpper)),
        ];
    });

    [Fact]
    public void The_tables_have_at_least_thirty_independent_rows()
    {
        foreach (var table in new[] { "mean-growth", "change-limits" }) ReferenceTable.Load(table).Count(row => row.Kind == "independent").Should().BeGreaterThanOrEqualTo(30, table);
        ReferenceTable.Load("slope-changes").Count(row => row.Kind == "independent" && row.Count("changes") > 0).Should().BeGreaterThanOrEqualTo(50);
    }

    private static BrokenLineFit Fit(ReferenceRow row) => BrokenLine.Fit(
        TrendRows.Read(row.Text("counts")), (int)row.Count("changes"), new SlopeChangeOptions { LeastPeriods = (int)row.Count("least_periods"), Scale = BrokenLineReferenceTests.Scales[row.Text("scale")] });

    /// <summary>The tolerance is in units of the span of the periods.</summary>
    private static string? Mismatch(ReferenceRow row, string wanted, double? actual)
    {
        if (wanted == "none" || actual is null) return wanted == "none" && actual is null ? null : $"{row}: should be {wanted}, is {actual:R}";
        var (expected, unit) = (double.Parse(wanted, NumberStyles.Float, CultureInfo.InvariantCulture), row.Number("unit"));
        return row.Within(expected / unit, actual.Value / unit) ? null : $"{row}: should be {wanted}, is {actual:R}";
    }
}
