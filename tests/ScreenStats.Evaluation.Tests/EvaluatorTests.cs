using ScreenStats.Testing.Programs;

namespace ScreenStats.Evaluation.Tests;

public class EvaluatorTests
{
    [Fact]
    public void Analyses_beside_each_other_find_what_they_find_one_after_the_other()
    {
        var program = ProgramDraw.Of(new DrawnPlan { Sites = 5, Weeks = 20, Lots = 4, Runs = 4000, FollowThrough = (0.9, 0.9) }, seed: 3);
        var tally = Counting.Cubes.Tally.FromCells(program.Cells);
        var told = new Teller();
        var inOrder = Evaluator.Evaluate(tally, new Counting.Programs.ProgramSettings(), told, oneByOne: true);
        var beside = Evaluator.Evaluate(tally, new Counting.Programs.ProgramSettings());
        Lines(beside).Should().Equal(Lines(inOrder)).And.HaveCountGreaterThan(500).And.Contain(line => line.StartsWith("trend", StringComparison.Ordinal));
        told.Said.Should().OnlyHaveUniqueItems().And.Contain("trend").And.EndWith("answers");
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void Who_listens_can_end_the_evaluation(bool oneByOne)
    {
        var program = ProgramDraw.Of(new DrawnPlan { Sites = 3, Weeks = 8, Lots = 2, Runs = 900, FollowThrough = (0.9, 0.9) }, seed: 3);
        var told = new Teller { Stop = "predictive values" };
        FluentActions.Invoking(() => Evaluator.Evaluate(Counting.Cubes.Tally.FromCells(program.Cells), new Counting.Programs.ProgramSettings(), told, oneByOne))
            .Should().ThrowExactly<OperationCanceledException>();
        told.Said.Should().EndWith("predictive values");
    }

    /// <summary>Every row of every table.</summary>
    private static List<string> Lines(Findings findings) =>
    [
        .. from table in findings.Tables
           from row in Enumerable.Range(0, table.RowCount)
           select table.Id + ": " + string.Join(" | ", Enumerable.Range(0, table.Columns.Length).Select(column => table.CellAt(row, column))),
    ];

    private sealed class Teller : IProgress<string>
    {
        public List<string> Said { get; } = [];

        public string? Stop { get; init; }

        public void Report(string value)
        {
            Said.Add(value);
            if (value == Stop) throw new OperationCanceledException();
        }
    }
}
