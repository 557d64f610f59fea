using Microsoft.Data.Analysis;
using ScreenStats.Counting.Diagnostics;
using ScreenStats.Evaluation;
using ScreenStats.Evaluation.Model;
using ScreenStats.Reporting;
using ScreenStats.Statistics.Proportions;
using ScreenStats.Synthesis.Simulation;
using ScreenStats.Testing;

namespace ScreenStats.Tests;

public sealed class FaceTests : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("face").FullName;

    public void Dispose() => Directory.Delete(folder, true);

    /// <summary>The seven lines of the design, as written but for the two places on the disk.</summary>
    [Fact]
    public void The_road_from_exports_to_a_report_is_seven_lines()
    {
        var program  = ScreeningProgram.Open(RepositoryRoot.Combine("sample-data", "marrowlight"));
        var reading  = program.Read();
        var findings = reading.Tally.Evaluate(program.Settings);
        var frame = findings.Positivity.By(Grouping.Site).ToDataFrame();
        var flagged = findings.Lots.Where(lot => lot.Flag != Flag.None);
#pragma warning disable xUnit1051 // The line must compile as a caller writes it.
        Report.Write(findings, Path.Combine(folder, "report"));
#pragma warning restore xUnit1051
        var interval = ProportionInterval.Wilson(81, 263, confidence: 0.95);

        reading.Ledger.Should().NotBeEmpty();
        reading.Diagnostics.Should().NotBeEmpty();
        frame.Rows.Count.Should().Be(findings.Sites.Count);
        flagged.Should().ContainSingle();
        File.Exists(Path.Combine(folder, "report", "report.html")).Should().BeTrue();
        interval.Lower.Should().BeApproximately(0.2553, 5e-5); // Newcombe 1998, Table I, quoted in independent documents
    }

    [Fact]
    public void A_data_frame_has_the_table_s_columns_types_and_gaps()
    {
        var table = new Table<(string Name, long? Rows, double? Share, DateOnly? Day)>(
            "example", "Example", "For this test.",
            [
                new("name", "Name", Unit.Text, "A name.", row => Cell.Text(row.Name)),
                new("rows", "Rows", Unit.Count, "A count.", row => row.Rows is { } rows ? Cell.Count(rows) : Cell.Hidden),
                new("share", "Share", Unit.Proportion, "A share.", row => Cell.NumberOr(row.Share, "nothing was counted")),
                new("day", "Day", Unit.Date, "A day.", row => Cell.Date(row.Day)),
            ],
            [("a", long.MaxValue, 0.1, new DateOnly(2026, 1, 5)), ("b", null, null, null)]);

        var frame = table.ToDataFrame();

        frame.Columns.Select(column => column.Name).Should().Equal("name", "rows", "share", "day");
        frame.Columns["rows"].Should().BeOfType<Int64DataFrameColumn>();
        frame.Rows[0].Should().Equal("a", long.MaxValue, 0.1, new DateTime(2026, 1, 5));
        frame.Rows[1].Should().Equal(new object?[] { "b", null, null, null }.AsEnumerable());
    }

    [Fact]
    public void A_program_opens_from_its_folder_from_its_file_and_without_a_file()
    {
        var sample = RepositoryRoot.Combine("sample-data", "marrowlight");
        var fromFolder = ScreeningProgram.Open(sample);
        var fromFile = ScreeningProgram.Open(Path.Combine(sample, "program.json"));

        fromFile.Folder.Should().Be(fromFolder.Folder);
        fromFile.Settings.Title.Should().Be(fromFolder.Settings.Title).And.NotBe(ScreeningProgram.Open(folder).Settings.Title);
        ScreeningProgram.Open(folder).File.Should().BeNull();
    }

    [Fact]
    public void A_course_by_day_is_in_the_settings_once_the_program_is_open_and_one_that_cannot_be_read_is_told()
    {
        File.WriteAllText(Path.Combine(folder, "program.json"), """{ "cadence": { "course": { "kind": "by-day", "file": "course.csv" } } }""");
        FluentActions.Invoking(() => ScreeningProgram.Open(folder)).Should().Throw<UnusableDataException>().Which.Diagnostics.Should().ContainSingle().Which.Code.Should().Be("missing-file");
        File.WriteAllText(Path.Combine(folder, "course.csv"), "day,detection,infectiousness\n0,0,0\n4,0.8,1\n9,0,0\n");
        ScreeningProgram.Open(folder).Settings.Cadence.Course!.Days.Select(day => day.Detection).Should().Equal(0, 0.8, 0);
    }

    [Fact]
    public void A_program_that_is_not_there_is_unusable_data() =>
        FluentActions.Invoking(() => ScreeningProgram.Open(Path.Combine(folder, "nowhere")))
            .Should().Throw<UnusableDataException>().Which.Diagnostics.Should().ContainSingle().Which.Code.Should().Be("program-not-found");

    [Fact]
    public void Codes_of_this_room_are_in_the_one_catalogue()
    {
        var codes = DiagnosticCatalogue.All.Select(description => description.Code).ToArray();

        codes.Should().OnlyHaveUniqueItems().And.Contain([Counting.Programs.ProgramFile.NotFoundCode, Counting.Programs.ProgramFile.UnreadableCode, PlanCheck.Code]);
    }
}
