using System.Text;
using System.Text.Json;
using AngleSharp.Dom;
using AngleSharp.Html.Parser;
using ScreenStats.Evaluation;
using ScreenStats.Evaluation.Model;
using ScreenStats.Reporting.Html;
using ScreenStats.Reporting.Html.Tables;
using ScreenStats.Reporting.Pages;

namespace ScreenStats.Reporting.Tests.Html;

public class TableDataTests
{
    [Fact]
    public void What_stands_behind_every_table_are_rows_of_its_file()
    {
        foreach (var (name, findings) in Programs.All)
        {
            var (compared, reshaped) = Compare(Report.Files(findings, new ReportInputs()));
            compared.Should().BeGreaterThan(15, name);
            // Tables that the page has in another shape than the file: an option to a row, words of the page.
            reshaped.Should().OnlyContain(table => table.StartsWith("cadence", StringComparison.Ordinal) || table.StartsWith("worth", StringComparison.Ordinal), name);
        }
    }

    [Fact]
    public void What_a_report_hides_stands_hidden_behind_its_tables_too()
    {
        var settings = Programs.FaultyLot.Settings;
        var hiding = Programs.FaultyLot with { Settings = settings with { Report = settings.Report with { SuppressBelow = 5 } } };
        var files = Report.Files(hiding, new ReportInputs());
        Compare(files).Compared.Should().BeGreaterThan(5);
        var data = Data(files).SelectMany(block => Rows(block)).SelectMany(row => row).ToArray();
        data.Should().Contain("hidden");
        var open = Data(Report.Files(Programs.FaultyLot, new ReportInputs())).SelectMany(block => Rows(block)).SelectMany(row => row);
        open.Should().NotContain("hidden");
    }

    [Fact]
    public void Hostile_names_stay_text_in_the_data_and_come_back_as_the_file_has_them()
    {
        var page = Encoding.UTF8.GetString(Report.Files(Programs.Hostile, new ReportInputs())["report.html"]);
        foreach (var block in new HtmlParser().ParseDocument(page).QuerySelectorAll(".scroll > table + script").Select(script => script.TextContent))
        {
            block.Should().NotContainAny("<", ">", "&", "'", "\u202E", "\uFFFE", "\n");
            block.Should().MatchRegex("^[ -~]+$", "signs that every parser reads alike");
        }

        var names = new HtmlParser().ParseDocument(page).QuerySelectorAll(".scroll > table + script").Select(script => JsonDocument.Parse(script.TextContent).RootElement)
            .Where(block => block.GetProperty("table").GetString() == "sites").SelectMany(block => Rows(block)).Select(row => row[0]).ToArray();
        names.Should().Contain(["<script>alert(\"x\")</script>", "'=cmd|' /C calc'!A0", "'+1", "'@sum", "\u202Etxt.exe", "'\tTab", "line\nbreak, comma", "北京"]);
    }

    [Fact]
    public void A_column_of_one_value_stands_once_and_texts_that_come_again_have_places()
    {
        ITable table = new Table<(string By, string Level, double Share, int Count)>(
            "small", "Small", "For tests.",
            [
                new("by", "By", Unit.Text, "By.", row => Cell.Text(row.By)), new("level", "Level", Unit.Text, "Level.", row => Cell.Text(row.Level)),
                new("share", "Share", Unit.Proportion, "Share.", row => Cell.Number(row.Share)), new("count", "Count", Unit.Count, "Count.", row => row.Count < 0 ? Cell.Hidden : Cell.Count(row.Count)),
                new("note", "Note", Unit.Text, "Note.", _ => Cell.Text("same")), new("on", "On", Unit.Date, "On.", row => row.Count == 1 ? Cell.Empty : Cell.Date(new DateOnly(2026, 1, 5))),
            ],
            [("site", "North", 0.25, 1), ("lot", "A;1", -0.5, -1), ("site", "South", 1e-7, 3)]);
        var json = TableData.Json(new TableView(table, "Small", ["level", "count"]), ["level", "count", "on"]);
        json.Should().Be(
            """{"table":"small","rows":3,"kinds":"ttnntd","shown":[1,3,5],"names":[[1,0]],"day":5,"columns":["by","level","share","count","note","on"],"values":[["0;1;0","site","lot"],["","North","A;1","South"],".25;-0.5;1E-07","1;hidden;3",["","same"],";2026-01-05;2026-01-05"]}""");
        Rows(JsonDocument.Parse(json).RootElement).Should().BeEquivalentTo(
            new string[][] { ["site", "North", "0.25", "1", "same", ""], ["lot", "A;1", "-0.5", "hidden", "same", "2026-01-05"], ["site", "South", "1E-07", "3", "same", "2026-01-05"] }, options => options.WithStrictOrdering());
    }

    [Fact]
    public void The_level_of_a_models_term_is_no_name_of_a_site()
    {
        var table = new Table<int>(
            "terms", "Terms", "For tests.",
            [new("by", "By", Unit.Text, "By.", _ => Cell.Text("site")), new("term", "Term", Unit.Text, "Term.", _ => Cell.Text("period")), new("level", "Level", Unit.Text, "Level.", _ => Cell.Text("spring"))], [1]);
        TableData.Json(new TableView(table, "Terms", ["level"]), ["level"]).Should().Contain("\"names\":[]");
    }

    // How many tables have the columns of their file, each row of which must stand there, and which have others.
    private static (int Compared, List<string> Reshaped) Compare(SortedDictionary<string, byte[]> files)
    {
        var compared = 0;
        var reshaped = new List<string>();
        foreach (var block in Data(files))
        {
            var id = block.GetProperty("table").GetString()!;
            var lines = Encoding.UTF8.GetString(files[$"tables/{id}.csv"]);
            var columns = block.GetProperty("columns").EnumerateArray().Select(column => column.GetString()!).ToArray();
            if (!lines.StartsWith(string.Join(',', columns) + "\n", StringComparison.Ordinal))
            {
                reshaped.Add(id);
                continue;
            }

            compared++;
            foreach (var row in Rows(block)) lines.Should().Contain("\n" + string.Join(',', row.Select(Field)) + "\n", id);
        }

        return (compared, reshaped);
    }

    private static string Field(string text) => text.AsSpan().IndexOfAny(",\"\r\n") < 0 ? text : $"\"{text.Replace("\"", "\"\"", StringComparison.Ordinal)}\"";

    private static IEnumerable<JsonElement> Data(SortedDictionary<string, byte[]> files) =>
        new HtmlParser().ParseDocument(Encoding.UTF8.GetString(files["report.html"])).QuerySelectorAll(".scroll > table + script").Select(script => JsonDocument.Parse(script.TextContent).RootElement);

    // As the script reads it.
    private static string[][] Rows(JsonElement block)
    {
        var rows = block.GetProperty("rows").GetInt32();
        var columns = block.GetProperty("values").EnumerateArray().Select(values =>
        {
            if (values.ValueKind == JsonValueKind.String)
            {
                var written = values.GetString()!;
                return rows > 1 && written.Contains(';', StringComparison.Ordinal) ? written.Split(';').Select(text => text.StartsWith('.') ? "0" + text : text).ToArray() : [.. Enumerable.Repeat(written, rows)];
            }

            var texts = values.EnumerateArray().Skip(1).Select(text => text.GetString()!).ToArray();
            var places = values[0].GetString()!;
            return texts.Length == rows ? texts : places.Length == 0 ? [.. Enumerable.Repeat(texts[0], rows)] : places.Split(';').Select(place => texts[int.Parse(place, System.Globalization.CultureInfo.InvariantCulture)]).ToArray();
        }).ToArray();
        columns.Should().AllSatisfy(column => column.Should().HaveCount(rows));
        return [.. Enumerable.Range(0, rows).Select(row => columns.Select(column => column[row]).ToArray())];
    }
}
