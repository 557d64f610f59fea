using ScreenStats.Counting.Diagnostics;
using ScreenStats.Counting.Programs;

namespace ScreenStats.Records.Tests.Understanding;

public class DateOrderTests
{
    [Fact]
    public void A_column_that_leaves_no_doubt_is_read_in_its_order()
    {
        using var folder = new TestFolder().With("screening.csv", Rows("03/04/2026", "13/04/2026"));
        var reading = folder.Read();
        reading.Tally.Cells.Screens.Select(cell => cell.Day).Should().BeEquivalentTo([new DateOnly(2026, 4, 3), new DateOnly(2026, 4, 13)]);
        var column = reading.Understanding[0].Columns.Single(one => one.Column == "collected_at");
        column.DateOrder.Should().Be(DateOrder.DayFirst);
        column.DateOrderWhy.Should().Contain("line 3 of screening.csv");
        folder.With("screening.csv", Rows("03/04/2026 7:15 PM", "03/31/2026 8:00 AM"));
        folder.Read().Tally.Cells.Screens.Select(cell => cell.Day).Should().BeEquivalentTo([new DateOnly(2026, 3, 4), new DateOnly(2026, 3, 31)]);
    }

    [Fact]
    public void The_evidence_may_stand_in_another_file_of_the_export()
    {
        using var folder = new TestFolder().With("screening-1.csv", Rows("03/04/2026")).With("screening-2.csv", Rows("03/31/2026"));
        folder.Read().Tally.Cells.Screens.Select(cell => cell.Day).Should().BeEquivalentTo([new DateOnly(2026, 3, 4), new DateOnly(2026, 3, 31)]);
    }

    [Fact]
    public void A_column_in_doubt_is_an_error_that_shows_two_lines_which_would_differ()
    {
        using var folder = new TestFolder().With("screening.csv", Rows("05/05/2026", "03/04/2026", "06/06/2026", "07/08/2026"));
        var found = folder.Refused().Should().ContainSingle().Subject;
        found.Code.Should().Be(ReadingDiagnostics.AmbiguousDates);
        found.Column.Should().Be("collected_at");
        found.Message.Should().Contain("line 3 of screening.csv").And.Contain("line 5 of screening.csv").And.Contain("dateOrder").And.NotContain("03/04");
    }

    [Fact]
    public void Dates_that_contradict_one_another_are_an_error()
    {
        using var folder = new TestFolder().With("screening.csv", Rows("31/03/2026", "03/31/2026"));
        var found = folder.Refused().Should().ContainSingle().Subject;
        found.Code.Should().Be(ReadingDiagnostics.ContradictoryDates);
        found.Message.Should().Contain("line 2 of screening.csv").And.Contain("line 3 of screening.csv");
    }

    [Fact]
    public void The_program_file_settles_it()
    {
        using var folder = new TestFolder().With("screening.csv", Rows("03/04/2026", "2026-04-05", "13/04/2026"));
        var monthFirst = folder.Read(TestFolder.Screening(new ExportSettings { DateOrder = DateOrder.MonthFirst }));
        monthFirst.Tally.Cells.Screens.Select(cell => cell.Day).Should().BeEquivalentTo([new DateOnly(2026, 3, 4), new DateOnly(2026, 4, 5)]);
        monthFirst.SetAside.Should().ContainSingle().Which.Line.Should().Be(4);
        folder.Read(TestFolder.Screening(new ExportSettings { DateOrder = DateOrder.Iso })).SetAside.Should().HaveCount(2);
    }

    [Fact]
    public void A_few_doubtful_dates_among_many_of_ISO_are_set_aside()
    {
        using var folder = new TestFolder().With("screening.csv",
            Rows([.. Enumerable.Range(1, 28).Select(day => $"2026-02-{day:00}"), "03/04/2026", "2026-03-01"]));
        folder.Read().SetAside.Should().ContainSingle().Which.Should().Match<SetAsideRow>(row => row.Line == 30 && row.Code == ReadingDiagnostics.UnreadableDate);
    }

    private static string Rows(params string[] dates) =>
        TestFolder.Headings + string.Concat(dates.Select((date, i) => $"p{i},North,{date},neg\n"));
}
