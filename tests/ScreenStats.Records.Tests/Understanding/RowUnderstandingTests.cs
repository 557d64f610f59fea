using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Diagnostics;
using ScreenStats.Counting.Ledger;
using System.Collections.Immutable;
using ScreenStats.Counting.Programs;

namespace ScreenStats.Records.Tests.Understanding;

public class RowUnderstandingTests
{
    [Fact]
    public void Outcomes_come_from_the_two_lines_where_there_is_no_result()
    {
        using var folder = new TestFolder().With("screening.csv",
            "person,site,collected_at,control_line,test_line\np1,N,2026-01-05,yes,no\np2,N,2026-01-05,1,TRUE\np3,N,2026-01-05,no,y\np4,N,2026-01-05,absent,0\n"
            + "p5,N,2026-01-05,,no\np6,N,2026-01-05,yes,perhaps\n");
        var reading = folder.Read();
        TestFolder.Outcomes(reading).Should().Equal(1, 1, 1, 1);
        reading.SetAside.Select(row => (row.Line, row.Code, row.Reason)).Should().Equal(
            (6, ReadingDiagnostics.MissingValue, "control_line is blank"), (7, ReadingDiagnostics.UnknownResult, "test_line is not a known word"));
    }

    [Fact]
    public void A_result_that_contradicts_the_lines_is_taken_and_reported()
    {
        using var folder = new TestFolder().With("screening.csv",
            "person,site,collected_at,result,control_line,test_line\np1,N,2026-01-05,neg,yes,yes\np2,N,2026-01-05,,yes,yes\n");
        var reading = folder.Read();
        TestFolder.Outcomes(reading).Should().Equal(1, 1, 0, 0);
        reading.Diagnostics.Should().ContainSingle().Which.Code.Should().Be(ReadingDiagnostics.ResultAgainstLines);
    }

    [Fact]
    public void Headings_are_found_by_name_synonym_or_program_file_whatever_their_case_and_accents()
    {
        using var folder = new TestFolder().With("screening.csv",
            "Ünit,BADGE_NUMBER,Collection Date,Test-Result,Batch No,Comment\nN,p1,2026-01-05,neg,L1,hello\n");
        var settings = TestFolder.Screening(new ExportSettings { Columns = ImmutableSortedDictionary<string, string>.Empty.Add("site", "unit") });
        var reading = folder.Read(settings);
        reading.Understanding[0].Files[0].Headings.Select(heading => (heading.Column, heading.Why)).Should().Equal(
            ("site", HeadingEvidence.ProgramFile), ("person", HeadingEvidence.Synonym), ("collected_at", HeadingEvidence.Synonym),
            ("result", HeadingEvidence.Synonym), ("lot", HeadingEvidence.Synonym), (null, HeadingEvidence.NotRead));
        reading.Tally.Cells.Screens.Single().Lot.Should().Be("L1");
    }

    [Fact]
    public void A_columns_own_name_goes_before_its_synonyms()
    {
        using var folder = new TestFolder().With("screening.csv", "person,badge,site,collected_at,date,result\np1,x,N,2026-01-05,yesterday,neg\n");
        folder.Read().SetAside.Should().BeEmpty();
    }

    [Fact]
    public void Values_that_are_not_required_and_cannot_be_read_count_as_not_recorded()
    {
        using var folder = new TestFolder().With("screening.csv",
            "person,site,collected_at,result,specimen,collection,symptomatic,exposed,lot_expiry,read_at\n"
            + "p1,N,2026-01-05T08:00,neg,left,how,maybe,so-so,someday,later\np2,N,2026-01-05T08:00,neg,nose,observed,no,no,2026-08,2026-01-05T08:15\n");
        var reading = folder.Read();
        TestFolder.Rows(reading, LedgerEntry.Counted).Should().Be(2);
        reading.Diagnostics.Should().HaveCount(6).And.OnlyContain(one => one.Code == ReadingDiagnostics.UnreadableValue && one.Line == 2 && one.Occurrences == 1);
        reading.Tally.Cells.Completeness.Where(cell => cell.Column is "specimen" or "collection" or "symptomatic" or "exposed" or "lot_expiry" or "read_at")
            .Should().HaveCount(6).And.OnlyContain(cell => cell.Mapped && cell.Rows == 2 && cell.Recorded == 1);
        reading.Tally.Cells.Screens.Should().Contain(cell => cell.Specimen == Specimen.Nasal && cell.Collection == CollectedBy.Supervised);
    }

    [Fact]
    public void A_control_swab_needs_no_person()
    {
        using var folder = new TestFolder().With("screening.csv",
            TestFolder.Headings.TrimEnd() + ",control\n,N,2026-01-05T08:00,pos,positive\n,N,2026-01-05T08:05,neg,\np1,N,2026-01-05T08:10,neg,no\n");
        var reading = folder.Read();
        TestFolder.Rows(reading, LedgerEntry.ControlRun).Should().Be(1);
        TestFolder.Rows(reading, LedgerEntry.SetAside).Should().Be(1);
        TestFolder.Rows(reading, LedgerEntry.Counted).Should().Be(1);
    }

    [Fact]
    public void Duplicates_are_compared_as_understood_and_set_aside_rows_name_the_first()
    {
        using var folder = new TestFolder().With("screening.csv", TestFolder.Headings
            + "p1,N,2026-01-05T08:00,neg\np1, N ,2026-01-05 08:00:00,NEGATIVE\nP1,N,2026-01-05T08:00,neg\n");
        var reading = folder.Read();
        reading.SetAside.Should().ContainSingle().Which.Should().Match<SetAsideRow>(row => row.Line == 3 && row.Code == "duplicate" && row.FirstLine == 2);
        TestFolder.Rows(reading, LedgerEntry.Counted).Should().Be(2, "a person's text is a pseudonym: its case matters");
    }

    [Fact]
    public void The_local_day_is_the_one_written()
    {
        using var folder = new TestFolder().With("screening.csv", TestFolder.Headings
            + "p1,N,2026-01-05T23:30-05:00,neg\np2,N,2026-01-06T04:30Z,neg\n");
        folder.Read().Tally.Cells.Screens.Select(cell => cell.Day).Should().BeEquivalentTo([new DateOnly(2026, 1, 5), new DateOnly(2026, 1, 6)]);
    }

    [Fact]
    public void Headcounts_are_read_by_week_and_by_day()
    {
        using var folder = new TestFolder().With("screening.csv", TestFolder.Headings + "p1,N,2026-01-05,neg\n")
            .With("headcount-1.csv", "site,week,eligible\nN,2026-W05,120\nN,2026-W05,30\nN,2026-W60,5\n")
            .With("headcount-2.csv", "site,date,headcount\nS,2026-01-28,40\nS,2026-01-29,45\nS,2026-01-29,many\n");
        var reading = folder.Read();
        // Week 5 of 2026 begins on Monday 26 January (ISO 8601 week rule).
        reading.Tally.Cells.Headcount.Should().BeEquivalentTo(
            [new HeadcountCell("N", new DateOnly(2026, 1, 26), 150), new HeadcountCell("S", new DateOnly(2026, 1, 26), 45)]);
        TestFolder.Rows(reading, LedgerEntry.SetAside, ExportKind.Headcount).Should().Be(2);
    }

    [Fact]
    public void A_controls_export_is_counted_by_expected_and_observed()
    {
        using var folder = new TestFolder().With("screening.csv", TestFolder.Headings + "p1,N,2026-01-05,neg\n")
            .With("controls.csv", "site,run_at,control,result,lot\nN,2026-01-05,positive,pos,L1\nN,2026-01-05,positive,neg,L1\nN,2026-01-05,pc,pos,L1\nN,2026-01-05,no,pos,L1\n");
        var reading = folder.Read();
        reading.Tally.Cells.Controls.Should().BeEquivalentTo([
            new ControlCell("N", "L1", Levels.None, new DateOnly(2026, 1, 5), null, Levels.None, ControlExpectation.Positive, Outcome.Positive, 2),
            new ControlCell("N", "L1", Levels.None, new DateOnly(2026, 1, 5), null, Levels.None, ControlExpectation.Positive, Outcome.Negative, 1)]);
        TestFolder.Rows(reading, LedgerEntry.SetAside, ExportKind.Controls).Should().Be(1);
    }

    [Fact]
    public void A_controls_export_may_record_the_lines_instead()
    {
        using var folder = new TestFolder().With("screening.csv", TestFolder.Headings + "p1,N,2026-01-05,neg\n")
            .With("controls.csv", "site,run_at,control,control_line,test_line\nN,2026-01-05,positive,yes,no\nN,2026-01-05,negative,no,\n");
        var reading = folder.Read();
        reading.Tally.Cells.Controls.Should().ContainSingle().Which.Observed.Should().Be(Outcome.Negative);
        reading.SetAside.Should().ContainSingle().Which.Reason.Should().Be("test_line is blank");
    }

    [Theory]
    [InlineData(ExportKind.Screening)]
    [InlineData(ExportKind.Confirmatory)]
    [InlineData(ExportKind.Controls)]
    [InlineData(ExportKind.Headcount)]
    public void The_program_file_may_map_every_column_and_state_every_meaning(ExportKind export)
    {
        var columns = string.Join(",", Records.Understanding.CanonicalColumns.Of(export).Select(column => $"\"{column.Name}\": \"h\""));
        var words = string.Join(",", Records.Understanding.Words.Of(export).SelectMany(table => table.Canonical).Distinct().Select((word, i) => $"\"w{i}\": \"{word}\""));
        var text = $"{{ \"exports\": {{ \"{export.ToString().ToLowerInvariant()}\": {{ \"columns\": {{ {columns} }}, \"words\": {{ {words} }} }} }} }}";
        var settings = ProgramPlan.Of(ProgramFile.Parse(text), export);
        settings.Columns.Should().HaveCount(Records.Understanding.CanonicalColumns.Of(export).Count);
    }
}
