using ScreenStats.Statistics.Tests.Heterogeneity;
using ScreenStats.Statistics.Trends;
using ScreenStats.Statistics.Trends.SlopeChanges;

namespace ScreenStats.Statistics.Tests.Trends.SlopeChanges;

public sealed class BrokenLineReferenceTests
{
    internal static readonly Dictionary<string, DispersionScale> Scales = new()
    {
        ["binomial"] = DispersionScale.Binomial, ["pearson"] = DispersionScale.Pearson, ["pearson-at-least-one"] = DispersionScale.PearsonAtLeastOne,
    };

    [Fact]
    public void Every_row_of_the_reference_table_is_met() => Mismatches.ShouldBeNone(ReferenceTable.Load("slope-changes"), row =>
    {
        var fit = BrokenLine.Fit(
            TrendRows.Read(row.Text("counts")), (int)row.Count("changes"), new SlopeChangeOptions { LeastPeriods = (int)row.Count("least_periods"), Scale = Scales[row.Text("scale")] });
        return
        [
            .. GroupRows.Mismatches(row, "places", fit.Changes.Select(change => (double?)change.Time)),
            .. GroupRows.Mismatches(row, "place_errors", fit.Changes.Select(change => (double?)change.StandardError)),
            .. GroupRows.Mismatches(row, "differences", fit.Changes.Select(change => (double?)change.Difference)),
            .. GroupRows.Mismatches(row, "difference_errors", fit.Changes.Select(change => (double?)change.DifferenceError)),
            .. GroupRows.Mismatches(row, "slopes", fit.Segments.Select(segment => (double?)segment.Slope)),
            .. GroupRows.Mismatches(row, "slope_errors", fit.Segments.Select(segment => (double?)segment.StandardError)),
            row.Mismatch("last_slope", fit.Segments.Count == 0 ? null : fit.Segments[^1].Slope), row.Mismatch("intercept", fit.Intercept), row.Mismatch("deviance", fit.Deviance),
            row.Mismatch("pearson", fit.Pearson), row.Mismatch("log_likelihood", fit.LogLikelihood), row.Mismatch("akaike", fit.AkaikeCriterion),
        ];
    });
}
