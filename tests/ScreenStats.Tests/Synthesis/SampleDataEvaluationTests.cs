using System.Text.Json;
using ScreenStats.Counting.Ledger;
using ScreenStats.Evaluation;
using ScreenStats.Evaluation.Methods;
using ScreenStats.Evaluation.Model;
using ScreenStats.Records;

namespace ScreenStats.Tests.Synthesis;

/// <summary>The real reader and evaluation on the sample data, against the truth behind them.</summary>
public sealed class SampleDataEvaluationTests
{
    private static readonly Lazy<(ReadingResult Reading, Findings Findings)> Evaluated = new(() =>
    {
        var program = ScreeningProgram.Open(SampleDataTests.Folder);
        var reading = new ProgramReader().Read(program.Settings, program.Folder);
        return (reading, Evaluator.Evaluate(reading.Tally, program.Settings));
    });

    [Fact]
    public void Lots_flag_the_faulty_lot_and_no_other() =>
        Evaluated.Value.Findings.Lots.Where(lot => lot.Flag != Flag.None).Select(lot => (lot.Lot, lot.Flag)).Should().Equal(("D-0719", Flag.Refuted));

    [Fact]
    public void Sites_flag_the_site_with_poor_technique_and_no_other() =>
        Evaluated.Value.Findings.Sites.Where(site => site.Flag != Flag.None).Select(site => (site.Site, site.Flag)).Should().Equal(("Tindermoss", Flag.Invalid));

    [Fact]
    public void Every_number_in_the_tables_names_a_method_that_the_catalogue_explains()
    {
        foreach (var table in Evaluated.Value.Findings.Tables)
        {
            for (var column = 0; column < table.Columns.Length; column++)
            {
                if (!TableMethods.NeedsMethod(table.Columns[column])) continue;
                for (var row = 0; row < table.RowCount; row++)
                {
                    if (table.CellAt(row, column).Kind != CellKind.Number) continue;
                    MethodCatalogue.Find(TableMethods.Of(table, row, column) ?? "").Should().NotBeNull($"{table.Id}.{table.Columns[column].Name}, row {row}");
                }
            }
        }
    }

    [Fact]
    public void Every_row_becomes_what_the_truth_says()
    {
        using var truth = JsonDocument.Parse(File.ReadAllText(Path.Combine(SampleDataTests.Folder, "truth.json")));
        long Count(string key) => truth.RootElement.GetProperty(key).GetInt64();
        long Rows(ExportKind export, LedgerEntry entry) =>
            Evaluated.Value.Reading.Tally.Cells.Ledger.Where(cell => cell.Export == export && cell.Entry == entry).Sum(cell => cell.Rows);

        Rows(ExportKind.Screening, LedgerEntry.SetAside).Should().Be(Count("setAside"));
        Rows(ExportKind.Screening, LedgerEntry.Duplicate).Should().Be(Count("duplicates"));
        Rows(ExportKind.Screening, LedgerEntry.ControlRun).Should().Be(Count("controlRuns"));
        Rows(ExportKind.Screening, LedgerEntry.KeptOutSymptomatic).Should().Be(Count("symptomatic"));
        Rows(ExportKind.Screening, LedgerEntry.KeptOutExposed).Should().Be(Count("exposed"));
        Rows(ExportKind.Screening, LedgerEntry.Counted).Should().Be(Count("counted"));
        Rows(ExportKind.Confirmatory, LedgerEntry.SetAside).Should().Be(Count("confirmatorySetAside"));
        Rows(ExportKind.Confirmatory, LedgerEntry.Duplicate).Should().Be(Count("confirmatoryDuplicates"));
        Rows(ExportKind.Confirmatory, LedgerEntry.Counted).Should()
            .Be(Count("confirmatoryRows") - Count("confirmatorySetAside") - Count("confirmatoryDuplicates"));
    }

    [Fact]
    public void Incidence_sensitivity_and_specificity_of_how_often_hold_the_truth()
    {
        using var truth = JsonDocument.Parse(File.ReadAllText(Path.Combine(SampleDataTests.Folder, "truth.json")));
        double Number(string key) => truth.RootElement.GetProperty(key).GetDouble();
        var findings = Evaluated.Value.Findings;
        var inputs = findings.Cadence.Inputs;
        var days = findings.Span.LastDay!.Value.DayNumber - findings.Span.FirstDay!.Value.DayNumber + 1;
        (Number("infected") / (Number("people") * days)).Should().BeInRange(inputs.Incidence.Lower!.Value, inputs.Incidence.Upper!.Value);
        Number("sensitivity").Should().BeInRange(inputs.Sensitivity.Lower!.Value, inputs.Sensitivity.Upper!.Value);

        // Without the faulty lot: its false positives are told apart in the truth.
        var alarms = Number("falsePositive") - truth.RootElement.GetProperty("falsePositivesByLot").GetProperty("D-0719").GetDouble();
        var tests = Number("falsePositive") + Number("trueNegative") - findings.Lots.Single(lot => lot.Lot == "D-0719").Tests;
        (1 - (alarms / tests)).Should().BeInRange(inputs.Specificity.Lower!.Value, inputs.Specificity.Upper!.Value);
    }

    [Fact]
    public void Outcomes_and_audits_are_those_of_the_truth()
    {
        using var truth = JsonDocument.Parse(File.ReadAllText(Path.Combine(SampleDataTests.Folder, "truth.json")));
        long Count(string key) => truth.RootElement.GetProperty(key).GetInt64();
        var findings = Evaluated.Value.Findings;
        findings.Positivity.Program.Events.Should().Be(Count("detectedPositive") + Count("falsePositive"));
        findings.Positivity.Program.Trials.Should()
            .Be(Count("detectedPositive") + Count("falsePositive") + Count("detectableNegative") + Count("trueNegative"));
        findings.InvalidRuns.Program.Events.Should().Be(Count("inconclusive") + Count("invalid"));
        // An audit whose run had to be set aside finds no run, or an earlier one of the same day.
        findings.Audits.Program.Audited.Should().BeInRange(Count("audits") - 15, Count("audits"));
    }
}
