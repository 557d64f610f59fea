using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Programs;
using ScreenStats.Evaluation.Tests.Sketches;

namespace ScreenStats.Evaluation.Tests.Repeats;

public class RepeatAnalysisTests
{
    private static readonly DateOnly Day = TallyCellsBuilder.Monday;

    [Fact]
    public void Repeats_are_given_for_both_outcomes_and_each_at_every_site()
    {
        // Each repeat due belongs to an unusable run: the cubes are checked against one another.
        var runs = new TallyCellsBuilder();
        for (var run = 0; run < 8; run++) runs.Add("a", Outcome.Invalid, site: "North");
        for (var run = 0; run < 2; run++) runs.Add("b", Outcome.Inconclusive, FollowUp.Unverified, site: "North");
        for (var run = 0; run < 5; run++) runs.Add("c", Outcome.Invalid, site: "South");
        var cells = runs.Cells() with
        {
            Repeats = [new RepeatCell("North", Day, Outcome.Invalid, 8, 6), new RepeatCell("North", Day, Outcome.Inconclusive, 2, 0), new RepeatCell("South", Day, Outcome.Invalid, 5, 5)],
        };

        var found = Evaluator.Evaluate(Tally.FromCells(cells), new ProgramSettings()).Repeats;

        (found.Program.Due, found.Program.Done).Should().Be((15, 11));
        found.Rows.Select(row => (row.Level, row.Outcome, row.Due, row.Done)).Should().Equal(
            ("", "both", 15, 11), ("", "inconclusive", 2, 0), ("", "invalid", 13, 11),
            ("North", "both", 10, 6), ("North", "inconclusive", 2, 0), ("North", "invalid", 8, 6),
            ("South", "both", 5, 5), ("South", "inconclusive", 0, 0), ("South", "invalid", 5, 5));
        found.Sentences.Single().Text.Should().StartWith("11 of 15 repeats due after an inconclusive or invalid run were done on the same day (73.3 %) [few counts].");
    }
}
