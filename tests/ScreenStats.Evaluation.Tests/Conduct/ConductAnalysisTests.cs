using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Ledger;
using ScreenStats.Counting.Programs;
using ScreenStats.Evaluation.Tests.Sketches;

namespace ScreenStats.Evaluation.Tests.Conduct;

public class ConductAnalysisTests
{
    private static readonly ProgramSettings Stated = new()
    {
        Screens = [new ScreenSettings { Name = "Kit", ReadFromMinutes = 10, ReadToMinutes = 20, RunsPerKit = 40 }],
        Policy = new PolicySettings { IsolationDays = 10 },
    };

    [Fact]
    public void What_cannot_be_told_is_undefined_with_its_reason_and_never_zero()
    {
        var found = Evaluator.Evaluate(Cells().Tally(), new ProgramSettings()).Conduct;

        (found.ExpiredLot.Found, found.ReadOutsideWindow.Found, found.BeyondKitContents.Found, found.WithinIsolation.Found).Should().Be((null, null, null, null));
        found.WithinIsolation.FoundUndefined.Should().Contain("local rules set it");
        found.ExpiredLot.FoundUndefined.Should().Be("no expiry of lots is recorded");
        found.Sentences.Should().HaveCount(5).And.OnlyContain(sentence => sentence.Text.Contains("cannot be told", StringComparison.Ordinal));
        found.Rates.Where(rate => rate.Grouping == Grouping.Program).Should().OnlyContain(rate => rate.Share.Estimate == null && rate.Share.EstimateUndefined != null);
    }

    [Fact]
    public void What_can_be_told_is_zero_where_nothing_was_found_and_counted_where_it_was()
    {
        var cells = Cells().Cells() with
        {
            Completeness = [.. new[] { "lot_expiry", "read_at", "kit" }.Select(column => new CompletenessCell(ExportKind.Screening, column, true, 3, 2))],
            Conduct = [new ConductCell(ConductKind.ReadOutsideWindow, "North", "L-1", new DateOnly(2026, 1, 5), 2), new ConductCell(ConductKind.ReadOutsideWindow, "South", "L-1", new DateOnly(2026, 1, 5), 1)],
        };

        var found = Evaluator.Evaluate(Tally.FromCells(cells), Stated).Conduct;

        (found.ExpiredLot.Found, found.BeyondKitContents.Found, found.WithinIsolation.Found).Should().Be((0, 0, 0));
        (found.ReadOutsideWindow.Found, found.ReadOutsideWindow.Runs, found.ReadOutsideWindow.Share).Should().Be((3, 4, 0.75));
        found.Places.Select(place => (place.Grouping, place.Level, place.Found, place.Runs)).Should().Equal(
            (Grouping.Site, "North", 2L, 3L), (Grouping.Site, "South", 1L, 1L), (Grouping.Lot, "L-1", 3L, 4L));
    }

    private static TallyCellsBuilder Cells() => new TallyCellsBuilder()
        .Add("a", Outcome.Negative).Add("b", Outcome.Negative).Add("c", Outcome.Negative).Add("d", Outcome.Negative, site: "South");
}
