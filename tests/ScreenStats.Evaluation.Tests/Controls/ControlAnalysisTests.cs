using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Programs;
using ScreenStats.Evaluation.Tests.Sketches;

namespace ScreenStats.Evaluation.Tests.Controls;

public class ControlAnalysisTests
{
    [Fact]
    public void Expected_stands_against_observed_for_the_program_sites_and_lots()
    {
        ControlCell Cell(string site, string lot, ControlExpectation expected, Outcome observed, long runs) =>
            new(site, lot, Levels.None, TallyCellsBuilder.Monday, null, Levels.None, expected, observed, runs);
        var cells = new TallyCellsBuilder().Add("a", Outcome.Negative).Cells() with
        {
            Controls =
            [
                Cell("North", "L-1", ControlExpectation.Positive, Outcome.Positive, 9), Cell("North", "L-2", ControlExpectation.Positive, Outcome.Negative, 1),
                Cell("North", "L-1", ControlExpectation.Negative, Outcome.Negative, 7), Cell("South", "L-1", ControlExpectation.Negative, Outcome.Positive, 2),
                Cell("South", "L-1", ControlExpectation.Negative, Outcome.Invalid, 1),
            ],
        };

        var findings = Evaluator.Evaluate(Tally.FromCells(cells), new ProgramSettings());

        var found = findings.Controls;
        (found.Runs, found.Positive.Runs, found.Positive.AsExpected.Events).Should().Be((20, 10, 9));
        (found.Negative.Negative, found.Negative.Positive, found.Negative.Invalid, found.Negative.AsExpected.Estimate).Should().Be((7, 2, 1, 0.7));
        found.Parts.Select(part => (part.Level, part.Expected, part.AsExpected.Events, part.Runs)).Should().Equal(
            ("North", "negative", 7, 7), ("North", "positive", 9, 10), ("South", "negative", 0, 3),
            ("L-1", "negative", 7, 10), ("L-1", "positive", 9, 9), ("L-2", "positive", 0, 1));
        findings.Positivity.Program.Trials.Should().Be(1, "control swabs are not screens");
    }

    [Fact]
    public void Without_control_swabs_it_is_said()
    {
        var found = Evaluator.Evaluate(new TallyCellsBuilder().Tally(), new ProgramSettings()).Controls;

        found.ControlTable.RowCount.Should().Be(0);
        found.Duties.Should().OnlyContain(duty => duty.Unknown == "no run of a control swab is recorded" && duty.Missed.Estimate == null);
        found.Sentences.Single().Text.Should().StartWith("No run of a control swab is recorded");
    }
}
