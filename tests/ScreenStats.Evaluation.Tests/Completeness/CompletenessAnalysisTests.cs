using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Ledger;
using ScreenStats.Counting.Programs;
using ScreenStats.Evaluation.Tests.Sketches;

namespace ScreenStats.Evaluation.Tests.Completeness;

public class CompletenessAnalysisTests
{
    [Fact]
    public void A_blank_is_not_recorded_and_what_that_means_is_said()
    {
        var cells = new TallyCellsBuilder().Add("a", Outcome.Negative).Cells() with
        {
            Completeness =
            [
                new CompletenessCell(ExportKind.Screening, "lot", true, 200, 150), new CompletenessCell(ExportKind.Screening, "symptomatic", false, 200, 0),
                new CompletenessCell(ExportKind.Screening, "exposed", true, 200, 200), new CompletenessCell(ExportKind.Confirmatory, "reported_at", true, 0, 0),
            ],
        };

        var found = Evaluator.Evaluate(Tally.FromCells(cells), new ProgramSettings()).Completeness;

        found.Screening.Select(row => (row.Column, row.NotRecorded, row.NotRecordedShare)).Should().Equal(("exposed", 0L, 0.0), ("lot", 50L, 0.25), ("symptomatic", 200L, 1.0));
        found.Confirmatory.Single().NotRecordedShare.Should().BeNull();
        found.Sentences.Select(sentence => sentence.Text).Should().Equal(
            "For 25.0 % of the rows (50 of 200) it is not recorded which lot was used: these runs are in no comparison of lots.",
            "For 100 % of the rows (200 of 200) it is not recorded whether the person had symptoms: people with symptoms may be among the screens.");
    }
}
