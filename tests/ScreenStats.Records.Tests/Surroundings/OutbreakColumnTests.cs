using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Diagnostics;
using ScreenStats.Counting.Ledger;
using ScreenStats.Counting.Programs;

namespace ScreenStats.Records.Tests.Surroundings;

public sealed class OutbreakColumnTests
{
    private const string Headings = "person,site,collected_at,result,outbreak\n";

    [Theory]
    [InlineData("outbreak", "yes", "no")]
    [InlineData("Outbreak testing", "TRUE", "false")]
    [InlineData("Ausbruch", "ja", "nein")]
    [InlineData("brote", "sí", "no")]
    public void Yes_marks_a_run_no_and_blank_do_not(string heading, string yes, string no)
    {
        using var folder = new TestFolder().With("screening.csv",
            $"person,site,collected_at,result,{heading}\np1,Dock,2026-01-05T08:00,negative,{yes}\np2,Dock,2026-01-05T08:05,positive,{no}\np3,Dock,2026-01-05T08:10,positive,\np4,Dock,2026-01-05T08:20,positive,{yes}\n");

        var reading = folder.Read();

        Marked(reading).Should().Be(2);
        reading.Tally.Cells.Operators.Where(cell => cell.Occasion == Occasion.Outbreak).Sum(cell => cell.Runs).Should().Be(2);
        reading.Tally.Cells.Notable.Count(run => run.Occasion == Occasion.Outbreak).Should().Be(1);
        TestFolder.Rows(reading, LedgerEntry.Counted).Should().Be(4, "they stay counted");
        var told = reading.Diagnostics.Single(one => one.Code == SurroundingsDiagnostics.OutbreakRuns);
        told.Severity.Should().Be(Severity.Note);
        told.Message.Should().Contain("2 of 4 counted runs, at 1 site,");
        reading.Tally.Cells.Completeness.Single(cell => cell is { Export: ExportKind.Screening, Column: "outbreak" }).Recorded.Should().Be(3);
    }

    [Fact]
    public void A_word_that_is_not_known_counts_as_not_recorded_and_is_told()
    {
        using var folder = new TestFolder().With("screening.csv", Headings + "p1,Dock,2026-01-05T08:00,negative,perhaps\np2,Dock,2026-01-05T08:05,negative,no\n");

        var reading = folder.Read();

        Marked(reading).Should().Be(0);
        reading.Diagnostics.Single().Should().Match<Diagnostic>(one => one.Code == ReadingDiagnostics.UnreadableValue && one.Column == "outbreak");
    }

    [Fact]
    public void Rows_that_differ_in_the_mark_only_are_no_duplicates_but_nearly()
    {
        using var folder = new TestFolder().With("screening.csv", Headings + "p1,Dock,2026-01-05T08:00,negative,yes\np1,Dock,2026-01-05T08:00,negative,no\np2,Dock,2026-01-05T09:00,negative,no\n");

        var reading = folder.Read();

        TestFolder.Rows(reading, LedgerEntry.Duplicate).Should().Be(0);
        reading.Diagnostics.Single(one => one.Code == ConductDiagnostics.NearDuplicate).Message.Should().Contain("(outbreak)");
    }

    [Fact]
    public void The_program_file_marks_by_site_and_days_and_what_it_names_without_runs_is_told()
    {
        using var folder = new TestFolder().With("screening.csv", Headings
            + "p1,Dock,2026-01-05T08:00,negative,\np2,Dock,2026-01-06T23:59,negative,\np3,Dock,2026-01-07T00:00,negative,\np4,Mill,2026-01-06T08:00,negative,\np5,Dock,2026-01-06T08:00,negative,no\n");
        var settings = ProgramFile.Parse("""
            { "outbreaks": [ { "site": "Dock", "from": "2026-01-06", "to": "2026-01-06" }, { "site": "dock", "from": "2026-01-06" }, { "site": "Mill", "from": "2026-02-01" } ] }
            """);

        var reading = folder.Read(settings);

        Marked(reading).Should().Be(1);
        reading.Diagnostics.Where(one => one.Code == SurroundingsDiagnostics.OutbreakWithoutRuns).Select(one => one.Message).Should().SatisfyRespectively(
            second => second.Should().Contain("outbreaks[1]").And.Contain("how the site is spelled"),
            third => third.Should().Contain("outbreaks[2]").And.Contain("Check the days"));
    }

    [Theory]
    [InlineData("""{ "changes": [ { "on": "2026-01-06", "what": "a" } ] }""", "")]
    [InlineData("""{ "changes": [ { "on": "2026-01-05", "what": "a" } ] }""", "no run was counted before it")]
    [InlineData("""{ "changes": [ { "on": "2026-01-08", "what": "a" } ] }""", "no run was counted from it on")]
    [InlineData("""{ "changes": [ { "on": "2026-01-06", "what": "a", "sites": ["Q*"] } ] }""", "Check the patterns of sites")]
    [InlineData("""{ "changes": [ { "on": "2026-01-07", "what": "a", "sites": ["M*"] } ] }""", "no run was counted from it on")]
    [InlineData("""{ "community": { "measure": "positivity", "source": "a", "values": [ { "from": "2025-12-29", "value": 0.01 } ] } }""", "")]
    [InlineData("""{ "community": { "measure": "positivity", "source": "a", "until": "2026-01-04", "values": [ { "from": "2025-12-29", "value": 0.01 } ] } }""", "ends on 2026-01-04")]
    public void A_change_or_a_rate_that_meets_no_runs_is_told(string program, string told)
    {
        using var folder = new TestFolder().With("screening.csv", TestFolder.Headings
            + "p1,Dock,2026-01-05T08:00,negative\np2,Dock,2026-01-07T08:00,negative\np4,Mill,2026-01-05T08:00,negative\np5,Mill,2026-01-06T08:00,negative\n");

        var found = folder.Read(ProgramFile.Parse(program)).Diagnostics;

        if (told.Length == 0) found.Should().BeEmpty();
        else found.Should().ContainSingle().Which.Message.Should().Contain(told);
    }

    private static long Marked(ReadingResult reading) => reading.Tally.Cells.Screens.Where(cell => cell.Occasion == Occasion.Outbreak).Sum(cell => cell.Runs);
}
