using CsCheck;
using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Programs;

namespace ScreenStats.Records.Tests.PersonLog;

public sealed class OccasionTests
{
    private static readonly DateOnly First = new(2026, 3, 27);

    /// <summary>Marks separate cells and change nothing else: taken together again, the cubes are those of the same program without marks.</summary>
    [Fact]
    public void Marks_of_outbreaks_only_tell_runs_apart() => Programs.DistinctTimes.Sample(program =>
    {
        var marked = Tally.FromCells(program.Count(sinks: 2, threads: 2).Cells).Cells;
        var plain = Tally.FromCells((program with
        {
            Settings = program.Settings with { Outbreaks = [] },
            Runs = [.. program.Runs.Select(run => run with { Outbreak = null })],
        }).Count().Cells).Cells;

        var together = Tally.FromCells(marked with
        {
            Screens = [.. marked.Screens.Select(cell => cell with { Occasion = Occasion.Routine })],
            Operators = [.. marked.Operators.Select(cell => cell with { Occasion = Occasion.Routine })],
            Notable = [.. marked.Notable.Select(run => run with { Occasion = Occasion.Routine })],
            Settlements = [.. marked.Settlements.Select(cell => cell with { Occasion = Occasion.Routine })],
        }).Cells;
        together.Screens.Should().Equal(plain.Screens);
        together.Operators.Should().Equal(plain.Operators);
        together.Notable.Should().Equal(plain.Notable);
        together.Settlements.Should().Equal(plain.Settlements);
        together.Persons.Should().Equal(plain.Persons);
        together.Participation.Should().Equal(plain.Participation);
        together.Cases.Should().Equal(plain.Cases);
        together.Audits.Should().Equal(plain.Audits);
        together.Conduct.Should().Equal(plain.Conduct);
        together.Kits.Should().Equal(plain.Kits);
        together.Ledger.Should().Equal(plain.Ledger);
    }, iter: 300);

    [Fact]
    public void The_row_says_first_and_the_program_file_where_it_is_silent()
    {
        var program = new SmallProgram(
            new ProgramSettings { Outbreaks = [new("North", First, First.AddDays(1), "")] },
            [
                Run("a", "North", 0, null), Run("b", "North", 0, false), Run("c", "North", 1, null), Run("d", "North", 2, null),
                Run("e", "North", 2, true), Run("f", "South", 0, null), Run("g", "South", 0, true),
            ],
            null, null);

        var cells = Tally.FromCells(program.Count().Cells).Cells;

        cells.Screens.Select(cell => (cell.Site, cell.Day.DayNumber - First.DayNumber, cell.Occasion, cell.Runs)).Should().Equal(
            ("North", 0, Occasion.Routine, 1), ("North", 0, Occasion.Outbreak, 1), ("North", 1, Occasion.Outbreak, 1),
            ("North", 2, Occasion.Routine, 1), ("North", 2, Occasion.Outbreak, 1), ("South", 0, Occasion.Routine, 1), ("South", 0, Occasion.Outbreak, 1));
        cells.Operators.Where(cell => cell.Occasion == Occasion.Outbreak).Sum(cell => cell.Runs).Should().Be(4);
    }

    private static TestRun Run(string person, string site, int day, bool? outbreak) => new(
        person, First.AddDays(day).ToDateTime(new TimeOnly(8, 0)), 0, false, site, "A1", "(none)", "o1", Outcome.Negative,
        Specimen.Nasal, CollectedBy.Self, false, false, null, null, null, null, outbreak);
}
