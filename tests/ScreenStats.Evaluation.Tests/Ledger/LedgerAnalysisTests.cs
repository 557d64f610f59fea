using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Ledger;
using ScreenStats.Counting.Programs;
using ScreenStats.Evaluation.Tests.Sketches;

namespace ScreenStats.Evaluation.Tests.Ledger;

public class LedgerAnalysisTests
{
    [Fact]
    public void Read_is_the_sum_of_the_entries_and_comes_first()
    {
        var cells = new TallyCellsBuilder().Add("a", Outcome.Negative).Cells() with
        {
            Specimens = [new SpecimenCell(SpecimenReason.NotRecorded, 0, 1, 0, 0, 7)],
            Ledger =
            [
                new LedgerCell(ExportKind.Confirmatory, LedgerEntry.Counted, 7), new LedgerCell(ExportKind.Screening, LedgerEntry.Counted, 1),
                new LedgerCell(ExportKind.Screening, LedgerEntry.SetAside, 2), new LedgerCell(ExportKind.Screening, LedgerEntry.KeptOutExposed, 3),
                new LedgerCell(ExportKind.Screening, LedgerEntry.KeptOutSymptomatic, 4), new LedgerCell(ExportKind.Screening, LedgerEntry.Duplicate, 5),
            ],
        };

        var found = Evaluator.Evaluate(Tally.FromCells(cells), new ProgramSettings()).Ledger;

        found.Rows.Select(row => (row.Export, row.Entry, row.Rows)).Should().Equal(
            ("screening", "read", 15), ("screening", "set-aside", 2), ("screening", "duplicate", 5), ("screening", "control-run", 0),
            ("screening", "kept-out-symptomatic", 4), ("screening", "kept-out-exposed", 3), ("screening", "counted", 1),
            ("confirmatory", "read", 7), ("confirmatory", "set-aside", 0), ("confirmatory", "duplicate", 0), ("confirmatory", "counted", 7));
        (found.Read, found.Counted + found.SetAside + found.Duplicates + found.ControlRuns + found.KeptOut).Should().Be((15, 15));
        found.Tables.Single().Columns.Select(column => column.Name).Should().Equal("export", "entry", "rows");
        found.Sentences[0].Text.Should().StartWith("Every row is accounted for: of 15 rows of the screening export 1 are counted");
    }
}
