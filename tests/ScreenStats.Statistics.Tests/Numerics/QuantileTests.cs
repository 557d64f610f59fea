using ScreenStats.Statistics.Numerics;

namespace ScreenStats.Statistics.Tests.Numerics;

public sealed class QuantileTests
{
    [Fact]
    public void Every_row_of_the_reference_table_is_met() =>
        Mismatches.ShouldBeNone(ReferenceTable.Load("quantiles"), row =>
            [row.Mismatch("expected", row.Text("distribution") == "normal"
                ? Quantile.Normal(row.Number("confidence"))
                : Quantile.Student(row.Number("confidence"), row.Count("degrees_of_freedom")))]);

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(double.NaN)]
    public void A_confidence_outside_the_open_unit_interval_is_refused(double confidence)
    {
        foreach (var call in new Action[] { () => Quantile.Normal(confidence), () => Quantile.Student(confidence, 5) }) call.Should().Throw<ArgumentOutOfRangeException>();
    }

    [Fact]
    public void Student_needs_a_degree_of_freedom()
    {
        var call = () => Quantile.Student(0.95, 0);
        call.Should().Throw<ArgumentOutOfRangeException>();
    }
}
