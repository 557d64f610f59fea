using System.Text.Json;
using ScreenStats.Counting.Ledger;
using ScreenStats.Counting.Programs;
using ScreenStats.Testing;

namespace ScreenStats.Records.Tests;

public class SampleDataTests
{
    private static readonly string Folder = RepositoryRoot.Combine("sample-data", "marrowlight");

    [Fact]
    public void Every_row_of_the_sample_program_becomes_what_the_truth_beside_it_says()
    {
        // truth.json is written by the generator, which knows what it did to each row; the reader sees only the exports.
        using var truth = JsonDocument.Parse(File.ReadAllText(Path.Combine(Folder, "truth.json")));
        long Truth(string name) => truth.RootElement.GetProperty(name).GetInt64();
        var reading = Read();
        TestFolder.Rows(reading, LedgerEntry.SetAside).Should().Be(Truth("setAside"));
        TestFolder.Rows(reading, LedgerEntry.Duplicate).Should().Be(Truth("duplicates"));
        TestFolder.Rows(reading, LedgerEntry.ControlRun).Should().Be(Truth("controlRuns"));
        TestFolder.Rows(reading, LedgerEntry.KeptOutSymptomatic).Should().Be(Truth("symptomatic"));
        TestFolder.Rows(reading, LedgerEntry.KeptOutExposed).Should().Be(Truth("exposed"));
        TestFolder.Rows(reading, LedgerEntry.Counted).Should().Be(Truth("counted"));
        TestFolder.Rows(reading).Should().Be(Truth("rows"));
        TestFolder.Rows(reading, LedgerEntry.SetAside, ExportKind.Confirmatory).Should().Be(Truth("confirmatorySetAside"));
        TestFolder.Rows(reading, LedgerEntry.Duplicate, ExportKind.Confirmatory).Should().Be(Truth("confirmatoryDuplicates"));
        TestFolder.Rows(reading, ExportKind.Confirmatory).Should().Be(Truth("confirmatoryRows"));
        reading.SetAside.Count(row => row.File == "screening.csv").Should().Be((int)(Truth("setAside") + Truth("duplicates")));
    }

    [Fact]
    public void Every_ledger_of_the_sample_program_adds_up_to_the_rows_of_its_files()
    {
        var reading = Read();
        reading.Understanding.Should().HaveCount(5);
        foreach (var export in reading.Understanding)
        {
            TestFolder.Rows(reading, export.Export).Should().Be(export.Files.Sum(file => file.Rows));
        }
    }

    [Fact]
    public void Controls_and_headcount_reach_the_tally()
    {
        var cells = Read().Tally.Cells;
        cells.Headcount.Should().Contain(cell => cell.Site == "Quillmoor" && cell.Week == new DateOnly(2024, 9, 30) && cell.Eligible == 236);
        cells.Controls.Sum(cell => cell.Runs).Should().Be(624 + 104);
    }

    [Fact]
    public void Regions_and_the_outbreak_of_the_program_file_reach_the_tally()
    {
        using var truth = JsonDocument.Parse(File.ReadAllText(Path.Combine(Folder, "truth.json")));
        var reading = Read();
        var cells = reading.Tally.Cells;
        cells.Sites.Select(cell => cell.Region).Distinct().Should().BeEquivalentTo("Hollin Vale", "Skerry Coast", "Upper Tarn");
        cells.Screens.Select(cell => cell.Site).Distinct().Should().BeEquivalentTo(cells.Sites.Select(cell => cell.Site));
        var marked = cells.Screens.Where(cell => cell.Occasion == Counting.Cubes.Occasion.Outbreak).ToList();
        marked.Sum(cell => cell.Runs).Should().Be(truth.RootElement.GetProperty("outbreakRuns").GetInt64());
        marked.Should().OnlyContain(cell => cell.Site == "Sarnwick" && cell.Day >= new DateOnly(2025, 1, 6) && cell.Day <= new DateOnly(2025, 1, 19));
        reading.Diagnostics.Select(one => one.Code).Should().NotContain(["site-without-region", "site-never-screened", "change-without-runs", "community-without-runs", "identifier-levels"]);
    }

    private static ReadingResult Read() =>
        new ProgramReader().Read(ProgramFile.Parse(File.ReadAllText(Path.Combine(Folder, "program.json"))), Folder);
}
