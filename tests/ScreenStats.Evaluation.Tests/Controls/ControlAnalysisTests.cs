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

    [Fact]
    public void Kits_are_listed_where_a_control_failed_and_operators_are_compared_within_their_site()
    {
        var cells = new TallyCellsBuilder().Add("a", Outcome.Negative).Cells() with
        {
            Controls =
            [
                Control("North", "k-1", "op-1", Outcome.Positive, 20), Control("North", "k-2", "op-2", Outcome.Negative, 6), Control("North", "k-2", "op-2", Outcome.Positive, 14),
                Control("South", "k-3", "op-3", Outcome.Positive, 9),
            ],
        };

        var found = Evaluator.Evaluate(Tally.FromCells(cells), new ProgramSettings()).Controls;

        found.Parts.Where(part => part.Grouping == Grouping.Kit).Select(part => (part.Level, part.Failed, part.Runs, part.Comparison)).Should().Equal(("k-2", 6L, 20L, null));
        var second = found.Parts.Single(part => part.Level == "op-2");
        // Closed form: all 6 failures on the 20 of 40: C(20,6) / C(40,6) = 38760 / 3838380.
        second.Comparison!.P.Should().BeApproximately(38760.0 / 3838380, 1e-12);
        (second.Comparison.Expected, second.Comparison.Compared).Should().Be((3.0, 2));
        found.Parts.Single(part => part.Level == "op-3").Comparison!.PUndefined.Should().StartWith("nothing to compare it with");
        (found.Failed, found.Open, found.Brackets.Length).Should().Be((6, 6, 1));
    }

    [Fact]
    public void Runs_between_overlapping_brackets_are_in_doubt_once()
    {
        var cells = new TallyCellsBuilder().Add("a", Outcome.Negative, day: 0).Add("b", Outcome.Negative, day: 1).Add("c", Outcome.Positive, FollowUp.Pending, day: 2).Add("d", Outcome.Negative, day: 3).Cells() with
        {
            Controls =
            [
                Control("North", "k-1", "op-1", Outcome.Positive, 1, day: 1), Control("North", "k-1", "op-1", Outcome.Negative, 1, day: 2),
                Control("North", "k-1", "op-1", Outcome.Invalid, 1, day: 2), Control("North", "k-1", "op-1", Outcome.Positive, 1, day: 3),
            ],
        };

        var found = Evaluator.Evaluate(Tally.FromCells(cells), new ProgramSettings()).Controls;

        found.Brackets.Select(bracket => (bracket.Runs, bracket.Positives, bracket.Negatives)).Should().Equal((3, 1, 2), (3, 1, 2));
        (found.RunsInDoubt, found.Open).Should().Be((3, 0));
    }

    [Fact]
    public void What_the_policy_asks_for_and_was_missed_is_a_next_step_and_else_information()
    {
        var cells = new TallyCellsBuilder().Add("a", Outcome.Negative, day: 0).Add("b", Outcome.Negative, day: 4).Cells() with { Controls = [Control("North", "k-1", "op-1", Outcome.Positive, 1, day: 2)] };
        var asked = Evaluator.Evaluate(Tally.FromCells(cells), new ProgramSettings { Policy = new PolicySettings { ControlsRequired = [ControlTrigger.NewLot] } });
        var informed = Evaluator.Evaluate(Tally.FromCells(cells), new ProgramSettings());

        asked.Answers.NextSteps.Select(step => step.Id).Should().Contain("run-controls-of-new-lots").And.NotContain("run-controls-of-new-sites");
        informed.Answers.NextSteps.Select(step => step.Id).Should().NotContain(id => id.StartsWith("run-controls", StringComparison.Ordinal));
        asked.Controls.Missed.Where(start => start.Trigger == ControlTrigger.NewLot).Select(start => (start.Level, start.FirstControlDay, start.RunsWithoutControl)).Should().Equal(("L-1", TallyCellsBuilder.Monday.AddDays(2), 1));
        asked.Controls.Sentences.Should().Contain(sentence => sentence.Text.EndsWith("The program's policy asks for one.", StringComparison.Ordinal));
        informed.Controls.Sentences.Should().NotContain(sentence => sentence.Text.Contains("policy asks", StringComparison.Ordinal));
    }

    private static ControlCell Control(string site, string kit, string by, Outcome observed, long runs, int day = 0) =>
        new(site, "L-1", kit, TallyCellsBuilder.Monday.AddDays(day), null, by, ControlExpectation.Positive, observed, runs);
}
