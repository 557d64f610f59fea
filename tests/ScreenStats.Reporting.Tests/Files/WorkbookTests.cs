using System.IO.Compression;
using MiniExcelLibs;
using ScreenStats.Evaluation.Model;
using ScreenStats.Reporting.Files;

namespace ScreenStats.Reporting.Tests.Files;

public class WorkbookTests
{
    [Fact]
    public void Every_table_with_rows_is_a_sheet_and_the_last_describes_the_columns()
    {
        using var stream = new MemoryStream(Workbook.Of(Programs.FaultyLot.Tables));
        var wanted = Programs.FaultyLot.Tables.Where(table => table.RowCount > 0).Select(table => table.Id).Append("columns");
        stream.GetSheetNames().Should().Equal(wanted);
    }

    [Fact]
    public void Sheets_hold_what_the_tables_hold()
    {
        var table = SmallTable.Of([Cell.Text("North"), Cell.Count(7), Cell.Number(0.1 + 0.2), Cell.Undefined("none"), Cell.Date(new DateOnly(2026, 2, 1))]);
        using var stream = new MemoryStream(Workbook.Of([table]));
        var row = (IDictionary<string, object?>)stream.Query(useHeaderRow: true, sheetName: "small").Single();
        row["c0"].Should().Be("North");
        Convert.ToInt64(row["c1"], System.Globalization.CultureInfo.InvariantCulture).Should().Be(7);
        row["c2"].Should().Be(0.1 + 0.2);
        row["c3"].Should().BeNull();
        row["c4"].Should().Be("2026-02-01");
    }

    [Theory]
    [InlineData("=1+1")]
    [InlineData("$=1+1")]
    [InlineData("@x")]
    public void No_name_becomes_a_formula(string name)
    {
        using var archive = new ZipArchive(new MemoryStream(Workbook.Of([SmallTable.Of([Cell.Text(name), Cell.Count(1)])])), ZipArchiveMode.Read);
        using var reader = new StreamReader(archive.Entries.Single(entry => entry.FullName.EndsWith("sheet1.xml", StringComparison.Ordinal)).Open());
        var xml = reader.ReadToEnd();
        xml.Should().NotContain("<x:f>").And.NotContain("<f>").And.NotContain("<f ");
    }

    [Fact]
    public void The_bytes_are_the_same_each_time() => Workbook.Of(Programs.Hostile.Tables).Should().Equal(Workbook.Of(Programs.Hostile.Tables));

    [Fact]
    public void Names_with_characters_that_no_document_may_hold_do_not_break_it()
    {
        using var stream = new MemoryStream(Workbook.Of(Programs.Hostile.Tables));
        stream.Query(useHeaderRow: true, sheetName: "lots").Should().HaveCount(Programs.Hostile.Lots.Count);
    }
}
