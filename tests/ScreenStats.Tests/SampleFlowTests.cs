using ScreenStats.Counting.Ledger;
using ScreenStats.Evaluation;
using ScreenStats.Evaluation.Flow;
using ScreenStats.Testing;

namespace ScreenStats.Tests;

public class SampleFlowTests
{
    /// <summary>The same property over drawn programs stands with the analysis; here it is held from the files on.</summary>
    [Fact]
    public void In_the_sample_every_box_of_the_flow_is_the_sum_of_those_that_come_from_it()
    {
        var program = ScreeningProgram.Open(RepositoryRoot.Combine("sample-data", "marrowlight"));
        var reading = program.Read();
        var flow = reading.Tally.Evaluate(program.Settings).Flow;

        foreach (var box in flow.Rows)
        {
            var parts = flow.Rows.Where(part => part.ComesFrom == box.Key).ToList();
            if (parts.Count > 0) parts.Sum(part => part.Count).Should().Be(box.Count, box.Key);
        }

        flow.Find(FlowKeys.Rows)!.Count.Should().Be(reading.Ledger.Where(cell => cell.Export == ExportKind.Screening).Sum(cell => cell.Rows));
        flow.Find(FlowKeys.SpecimenRows)!.Count.Should().Be(reading.Ledger.Where(cell => cell.Export == ExportKind.Confirmatory).Sum(cell => cell.Rows));
        flow.Find(FlowKeys.Settling)!.Count.Should().BePositive().And.BeLessThanOrEqualTo(flow.Rows.Where(row => row.Outcome == "tested").Sum(row => row.Count));
        flow.Find(FlowKeys.NotLinked)!.Count.Should().BePositive("the sample has specimens that belong to no run");
    }
}
