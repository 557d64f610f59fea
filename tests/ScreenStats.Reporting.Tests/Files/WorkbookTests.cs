using System.Globalization;
using System.IO.Compression;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using MiniExcelLibs;
using ScreenStats.Evaluation.Methods;
using ScreenStats.Evaluation.Model;
using ScreenStats.Reporting.Files;
using ScreenStats.Reporting.Files.Workbooks;
using ScreenStats.Reporting.Html;

namespace ScreenStats.Reporting.Tests.Files;

/// <summary>The workbook, read back by a library that had no part in writing it (MiniExcel), and its parts as XML.</summary>
public class WorkbookTests
{
    private static readonly XNamespace Main = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";

    [Fact]
    public void Notes_come_first_then_every_table_with_rows_and_last_what_stands_in_the_columns()
    {
        using var stream = new MemoryStream(Workbook.Of(Programs.FaultyLot.Tables));
        var wanted = Programs.FaultyLot.Tables.Where(table => table.RowCount > 0).Select(table => table.Id).Prepend("notes").Append("columns");
        stream.GetSheetNames().Should().Equal(wanted);
    }

    [Fact]
    public void Cells_have_the_type_and_the_value_that_they_have_in_the_table()
    {
        var day = new DateOnly(2026, 2, 1);
        var table = SmallTable.Of([Cell.Text("North"), Cell.Count(7), Cell.Number(0.1 + 0.2), Cell.Undefined("none"), Cell.Date(day), Cell.Hidden, Cell.Empty]);
        Rows(Workbook.Of([table]), "small").Single().Should().Equal("North", 7.0, 0.1 + 0.2, null, day.ToDateTime(default), "hidden", null);
    }

    [Fact]
    public void Every_sheet_of_every_program_reads_back_as_its_table()
    {
        foreach (var (name, findings) in Programs.All.Where(program => program.Name != "published"))
        {
            var bytes = Workbook.Of(findings.Tables);
            foreach (var table in findings.Tables.Where(table => table.RowCount > 0))
            {
                var rows = Rows(bytes, table.Id);
                rows.Should().HaveCount(table.RowCount, $"{name}, {table.Id}");
                for (var row = 0; row < table.RowCount; row++)
                {
                    for (var column = 0; column < table.Columns.Length; column++)
                    {
                        var wanted = Wanted(table.CellAt(row, column));
                        if (!Equals(rows[row][column], wanted)) Assert.Fail($"{name}, {table.Id}, row {row}, {table.Columns[column].Name}: {rows[row][column]} for {wanted}");
                    }
                }
            }
        }
    }

    [Fact]
    public void Headings_name_their_unit_and_no_two_of_a_table_are_alike()
    {
        foreach (var table in Programs.All.SelectMany(program => program.Findings.Tables))
        {
            var headings = Workbook.Headings(table);
            headings.Should().OnlyHaveUniqueItems(table.Id);
            for (var column = 0; column < headings.Length; column++)
            {
                headings[column].Should().StartWith(table.Columns[column].Heading);
                headings[column].Contains(NumberFormats.Words(table.Columns[column].Unit), StringComparison.OrdinalIgnoreCase).Should().BeTrue($"{table.Id}, {headings[column]}");
            }
        }

        NumberFormats.Heading(new ColumnInfo("estimate", "Positivity", Unit.Proportion, "")).Should().Be("Positivity (%)");
        NumberFormats.Heading(new ColumnInfo("p95", "95 % wait within, hours", Unit.Hours, "")).Should().Be("95 % wait within, hours");
        NumberFormats.Heading(new ColumnInfo("runs", "Runs", Unit.Count, "")).Should().Be("Runs");
    }

    [Theory]
    [InlineData(Unit.Count, "#,##0", 1234.0)]
    [InlineData(Unit.Proportion, "0.0%", 0.134, 0.62)]
    [InlineData(Unit.Proportion, "0.000%", 0.0014633, 0.62)]
    [InlineData(Unit.Proportion, "0.000%", 0.9997)]
    [InlineData(Unit.Proportion, "0.0000%", 0.00000001)]
    [InlineData(Unit.Proportion, "0.0%", 0.0, 1.0)]
    [InlineData(Unit.Difference, "+0.00%;-0.00%;0.00%", -0.0123)]
    [InlineData(Unit.PValue, "[<0.0001]\"< 0.0001\";0.0000", 0.03)]
    [InlineData(Unit.Date, "yyyy-mm-dd")]
    [InlineData(Unit.Hours, "#,##0.0", 7.25)]
    [InlineData(Unit.Ratio, "#,##0.00", 1.234, 999.0)]
    [InlineData(Unit.Ratio, "[>=1000]#,##0;[>=10]#,##0.0;#,##0.00", 1.234, 1200.0)]
    [InlineData(Unit.Ratio, "#,##0", 3.0, 1200.0)]
    [InlineData(Unit.Text, "")]
    public void Formats_show_about_three_digits_of_the_smallest_number(Unit unit, string format, params double[] numbers) =>
        NumberFormats.Of(unit, numbers).Should().Be(format);

    [Theory]
    [InlineData("#,##0", 1234567.0, 9)]
    [InlineData("#,##0.0000", 0.5, 6)]
    [InlineData("#,##0.0000", -123456.789, 13)]
    [InlineData("0.00%", 0.1234, 6)]
    [InlineData("[>=1000]#,##0;[>=10]#,##0.0;#,##0.00", 12345.6, 6)]
    [InlineData("[>=1000]#,##0;[>=10]#,##0.0;#,##0.00", 12.34, 4)]
    [InlineData("[>=1000]#,##0;[>=10]#,##0.0;#,##0.00", -12.34, 6)]
    [InlineData("+0.0%;-0.0%;0.0%", 0.123, 6)]
    [InlineData("[<0.0001]\"< 0.0001\";0.0000", 0.03, 8)]
    public void A_column_is_as_wide_as_its_numbers_are_written(string format, double number, int letters) =>
        NumberFormats.Length(format, number).Should().Be(letters);

    [Fact]
    public void Names_of_sheets_differ_after_they_are_cut_and_whatever_their_case()
    {
        var longName = new string('a', 31);
        var names = SheetNames.Of([longName + "-by-site", longName + "-by-lot", longName, "Lots", "lots", "notes"], "notes", "columns");
        names.Should().Equal(longName, new string('a', 29) + "-2", new string('a', 29) + "-3", "Lots", "lots-2", "notes-2");
        names.Should().OnlyContain(name => name.Length <= 31);
        foreach (var (_, findings) in Programs.All)
            SheetNames.Of(findings.Tables.Select(table => table.Id), "notes", "columns").Should().OnlyContain(name => Regex.IsMatch(name, "^[a-z0-9-]{1,31}$"));
    }

    [Fact]
    public void Every_table_has_notes_with_its_methods_and_their_sources()
    {
        var findings = Programs.FaultyLot;
        var notes = Rows(Workbook.Of(findings.Tables), "notes");
        foreach (var table in findings.Tables)
        {
            var own = notes.Where(row => (string?)row[0] == table.Id).ToList();
            own.Should().ContainSingle(row => (string?)row[1] == "shows").Which[3].Should().Be(Written($"{table.Title}. {table.Meaning}"));
            foreach (var method in TableMethods.Of(table))
            {
                own.Should().ContainSingle(row => (string?)row[1] == "method" && (string?)row[2] == method, table.Id);
                own.Should().ContainSingle(row => (string?)row[1] == "source" && (string?)row[2] == method, table.Id).Which[3].Should().Be(Written(MethodCatalogue.Find(method)!.Source));
            }
        }

        notes.Where(row => (string?)row[1] == "source").Should().HaveCountGreaterThan(50);
    }

    [Fact]
    public void Every_cell_that_is_empty_because_a_figure_is_not_defined_has_its_reason_in_the_notes()
    {
        foreach (var (name, findings) in Programs.All.Where(program => program.Name != "published"))
        {
            var notes = Rows(Workbook.Of(findings.Tables), "notes").Where(row => (string?)row[1] == "not defined").ToLookup(row => (string)row[0]!);
            foreach (var table in findings.Tables)
            {
                var headings = Workbook.Headings(table);
                for (var column = 0; column < headings.Length; column++)
                {
                    var undefined = Enumerable.Range(0, table.RowCount).Select(row => table.CellAt(row, column)).Where(cell => cell.Kind == CellKind.Undefined).ToList();
                    var told = notes[table.Id].Where(row => (string?)row[2] == Written(headings[column])).ToList();
                    told.Sum(row => Cells((string)row[4]!)).Should().Be(undefined.Count, $"{name}, {table.Id}, {headings[column]}");
                    string Plain(string text) => Written(text).TrimEnd('.').ToUpperInvariant();
                    told.Select(row => Plain((string)row[3]!)).Distinct().Should().BeEquivalentTo(undefined.Select(cell => Plain(cell.AsText)).Distinct());
                }
            }
        }
    }

    [Fact]
    public void A_note_names_the_cells_of_its_table()
    {
        var table = new Table<string>("small", "Small", "", [new("c", "C", Unit.Ratio, "", row => row == "x" ? Cell.Undefined("nothing was counted") : Cell.Number(1))], ["x", "1", "x", "x", "1", "x"]);
        Rows(Workbook.Of([table]), "notes").Single(row => (string?)row[1] == "not defined").Should().Equal("small", "not defined", "C", "Nothing was counted.", "A2, A4:A5, A7");
    }

    [Fact]
    public void A_table_s_notes_lead_to_its_sheet()
    {
        var findings = Programs.FaultyLot;
        using var archive = Open(Workbook.Of(findings.Tables));
        var targets = Part(archive, "xl/worksheets/sheet1.xml").Descendants(Main + "hyperlink").Select(link => (string)link.Attribute("location")!).Distinct();
        targets.Should().Equal(findings.Tables.Where(table => table.RowCount > 0).Select(table => $"'{table.Id}'!A1"));
    }

    [Fact]
    public void Sheets_keep_their_headings_in_sight_and_hold_no_formula()
    {
        using var archive = Open(Workbook.Of(Programs.FaultyLot.Tables));
        var sheets = archive.Entries.Where(entry => entry.FullName.StartsWith("xl/worksheets/", StringComparison.Ordinal)).Select(entry => Part(archive, entry.FullName)).ToList();
        sheets.Should().HaveCountGreaterThan(20);
        foreach (var sheet in sheets)
        {
            var pane = sheet.Descendants(Main + "pane").Single();
            ((string?)pane.Attribute("ySplit"), (string?)pane.Attribute("state")).Should().Be(("1", "frozen"));
            sheet.Descendants(Main + "f").Should().BeEmpty();
            sheet.Descendants(Main + "col").Should().OnlyContain(column => (double)column.Attribute("width")! >= 10);
        }
    }

    [Fact]
    public void Headings_are_bold_over_a_line_and_nothing_is_filled()
    {
        using var archive = Open(Workbook.Of(Programs.FaultyLot.Tables));
        var styles = Part(archive, "xl/styles.xml");
        styles.Descendants(Main + "xf").Select(style => (string)style.Attribute("fillId")!).Should().OnlyContain(fill => fill == "0");
        var heading = styles.Element(Main + "styleSheet")!.Element(Main + "cellXfs")!.Elements().ElementAt((int)Part(archive, "xl/worksheets/sheet2.xml").Descendants(Main + "c").First().Attribute("s")!);
        styles.Descendants(Main + "font").ElementAt((int)heading.Attribute("fontId")!).Element(Main + "b").Should().NotBeNull();
        styles.Descendants(Main + "border").ElementAt((int)heading.Attribute("borderId")!).Element(Main + "bottom")!.Attribute("style")!.Value.Should().Be("thin");
    }

    [Theory]
    [InlineData("=1+1")]
    [InlineData("$=1+1")]
    [InlineData("@x")]
    [InlineData("_x0041_")]
    public void No_name_becomes_a_formula_or_another_name(string name)
    {
        var bytes = Workbook.Of([SmallTable.Of([Cell.Text(name), Cell.Count(1)])]);
        using var archive = Open(bytes);
        Part(archive, "xl/worksheets/sheet2.xml").Descendants(Main + "f").Should().BeEmpty();
        Part(archive, "xl/sharedStrings.xml").Descendants(Main + "t").Select(text => text.Value).Should().Contain(CsvText.Guarded(name).Replace("_x0041_", "_x005F_x0041_", StringComparison.Ordinal));
    }

    [Fact]
    public void The_bytes_are_the_same_each_time_and_every_entry_has_one_date()
    {
        var bytes = Workbook.Of(Programs.Hostile.Tables);
        bytes.Should().Equal(Workbook.Of(Programs.Hostile.Tables));
        using var archive = Open(bytes);
        archive.Entries.Should().OnlyContain(entry => entry.LastWriteTime.Year == 2000);
    }

    [Fact]
    public void Names_with_characters_that_no_document_may_hold_do_not_break_it()
    {
        var bytes = Workbook.Of(Programs.Hostile.Tables);
        using var archive = Open(bytes);
        foreach (var entry in archive.Entries) Part(archive, entry.FullName).Root.Should().NotBeNull();
        Rows(bytes, "lots").Should().HaveCount(Programs.Hostile.Lots.Count);
    }

    [Fact]
    public void Cells_are_named_as_spreadsheets_name_them() =>
        new[] { SheetXml.Name(0, 0), SheetXml.Name(9, 25), SheetXml.Name(1, 26), SheetXml.Name(0, 701), SheetXml.Name(0, 702) }.Should().Equal("A1", "Z10", "AA2", "ZZ1", "AAA1");

    private static ZipArchive Open(byte[] bytes) => new(new MemoryStream(bytes), ZipArchiveMode.Read);

    private static XDocument Part(ZipArchive archive, string name)
    {
        using var stream = archive.GetEntry(name)!.Open();
        return XDocument.Load(stream);
    }

    /// <summary>The rows under the headings.</summary>
    private static List<object?[]> Rows(byte[] bytes, string sheet)
    {
        using var stream = new MemoryStream(bytes);
        return [.. stream.Query(useHeaderRow: false, sheetName: sheet).Cast<IDictionary<string, object?>>().Skip(1).Select(row => row.Values.ToArray())];
    }

    private static object? Wanted(Cell cell) => cell.Kind switch
    {
        CellKind.Count or CellKind.Number => cell.AsNumber,
        CellKind.Text => cell.AsText.Length == 0 ? null : Written(CsvText.Guarded(cell.AsText)),
        CellKind.Date => cell.AsDate.ToDateTime(default),
        CellKind.Hidden => "hidden",
        _ => null,
    };

    /// <summary>A text as it stands after characters that no document may hold were replaced.</summary>
    private static string Written(string text) => System.Net.WebUtility.HtmlDecode(Markup.Escape(text));

    private static int Cells(string ranges) => Regex.Matches(ranges, @"[A-Z]+(\d+)(?::[A-Z]+(\d+))?").Sum(match =>
        match.Groups[2].Success ? int.Parse(match.Groups[2].Value, CultureInfo.InvariantCulture) - int.Parse(match.Groups[1].Value, CultureInfo.InvariantCulture) + 1 : 1)
        + (Regex.Match(ranges, @"and (\d+) more") is { Success: true } more ? int.Parse(more.Groups[1].Value, CultureInfo.InvariantCulture) : 0);
}
