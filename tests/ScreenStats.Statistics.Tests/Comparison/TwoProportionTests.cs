using ScreenStats.Statistics.Comparison;

namespace ScreenStats.Statistics.Tests.Comparison;

public sealed class TwoProportionTests
{
    [Fact]
    public void Every_row_of_the_reference_table_is_met() =>
        Mismatches.ShouldBeNone(ReferenceTable.Load("two-proportions"), row =>
        {
            var counts = new TwoProportions(row.Count("first_successes"), row.Count("first_trials"), row.Count("second_successes"), row.Count("second_trials"));
            var result = Contrasts.Of(row.Text("measure"), row.Text("method"), counts, row.Number("confidence"));
            return [row.Mismatch("value", result.Value), row.Mismatch("lower", result.Lower), row.Mismatch("upper", result.Upper)];
        });
}
