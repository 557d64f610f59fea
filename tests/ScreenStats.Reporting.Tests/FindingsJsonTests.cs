using System.Globalization;
using System.Text.Json;
using ScreenStats.Evaluation.Model;
using ScreenStats.Reporting.Files;

namespace ScreenStats.Reporting.Tests;

public class FindingsJsonTests
{
    [Fact]
    public void Every_figure_of_every_sentence_stands_in_the_file_with_the_same_value()
    {
        foreach (var (name, findings) in Programs.All.Where(program => program.Name != "published"))
        {
            using var json = JsonDocument.Parse(JsonText.Of(findings));
            foreach (var figure in findings.Sentences.SelectMany(sentence => sentence.Figures))
            {
                var (found, undefined) = JsonPaths.Find(json.RootElement, figure.Id);
                var why = $"{name}: {figure.Id}";
                switch (figure.Value.Kind)
                {
                    case CellKind.Count: found.GetInt64().Should().Be(figure.Value.AsCount, why); break;
                    case CellKind.Number: found.GetDouble().Should().Be(figure.Value.AsNumber, why); break;
                    // A confidence is spoken of as "95 %": a number of the file in the words of a sentence.
                    case CellKind.Text when found.ValueKind == JsonValueKind.Number: figure.Value.AsText.Should().Be((found.GetDouble() * 100).ToString("0.##", CultureInfo.InvariantCulture) + " %", why); break;
                    case CellKind.Text: found.GetString().Should().Be(figure.Value.AsText, why); break;
                    case CellKind.Date: found.GetString().Should().Be(figure.Value.ToString(), why); break;
                    case CellKind.Undefined: found.ValueKind.Should().Be(JsonValueKind.Null, why); undefined.Should().NotBeNullOrEmpty(why); break;
                    default: found.ValueKind.Should().Be(JsonValueKind.Null, why); break;
                }
            }
        }
    }

    [Fact]
    public void No_figure_is_addressed_by_its_place_in_a_list()
    {
        foreach (var figure in Programs.All.SelectMany(program => program.Findings.Sentences).SelectMany(sentence => sentence.Figures).Where(figure => figure.Id.EndsWith(']')))
            figure.Id.Should().EndWith(FigurePath.Row("", figure.Value.AsText), "a word of a list is addressed by itself");
    }

    [Fact]
    public void Tables_and_findings_agree()
    {
        var findings = Programs.FaultyLot;
        using var json = JsonDocument.Parse(JsonText.Of(findings));
        var lots = json.RootElement.GetProperty("lots");
        lots.GetArrayLength().Should().Be(findings.Lots.Count);
        var rows = CsvText.Of(findings.Lots.ToTable()).TrimEnd('\n').Split('\n');
        var headings = rows[0].Split(',');
        for (var row = 0; row < lots.GetArrayLength(); row++)
        {
            var cells = rows[row + 1].Split(',');
            string Cell(string column) => cells[Array.IndexOf(headings, column)];
            Cell("lot").Should().Be(lots[row].GetProperty("lot").GetString());
            foreach (var (column, property) in (ReadOnlySpan<(string, string)>)[("runs", "runs"), ("tests", "tests"), ("positives", "positives"), ("refuted", "refuted"), ("invalid", "invalid")])
            {
                Cell(column).Should().Be(lots[row].GetProperty(property).GetInt64().ToString(CultureInfo.InvariantCulture));
            }

            Cell("flag").Should().Be(lots[row].GetProperty("flag").GetString());
            var p = lots[row].GetProperty("refutedPHolm");
            Cell("refuted_p_holm").Should().Be(p.ValueKind == JsonValueKind.Null ? "" : p.GetDouble().ToString("R", CultureInfo.InvariantCulture));
        }

        var program = json.RootElement.GetProperty("positivity").GetProperty("program");
        var line = CsvText.Of(findings.Positivity.Tables[0]).Split('\n')[1].Split(',');
        line[3].Should().Be(program.GetProperty("trials").GetInt64().ToString(CultureInfo.InvariantCulture));
        line[5].Should().Be(program.GetProperty("estimate").GetDouble().ToString("R", CultureInfo.InvariantCulture));
    }

    [Fact]
    public void An_undefined_figure_is_null_beside_its_reason_and_a_defined_one_has_no_reason()
    {
        using var json = JsonDocument.Parse(JsonText.Of(Programs.All.First().Findings));
        var program = json.RootElement.GetProperty("positivity").GetProperty("program");
        program.GetProperty("estimate").ValueKind.Should().Be(JsonValueKind.Null);
        program.GetProperty("estimateUndefined").GetString().Should().NotBeNullOrEmpty();
        using var full = JsonDocument.Parse(JsonText.Of(Programs.FaultyLot));
        full.RootElement.GetProperty("positivity").GetProperty("program").TryGetProperty("estimateUndefined", out _).Should().BeFalse();
    }

    [Fact]
    public void One_line_without_an_end_for_a_command_and_many_with_one_for_a_file()
    {
        JsonText.Of(new { PositiveValue = 0.1 + 0.2, Name = "Ü<" }, indented: false).Should().Be("{\"positiveValue\":0.30000000000000004,\"name\":\"Ü\\u003C\"}");
        JsonText.Of(new { A = 1 }).Should().Be("{\n \"a\": 1\n}\n");
    }
}
