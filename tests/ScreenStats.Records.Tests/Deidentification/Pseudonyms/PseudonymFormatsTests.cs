using System.IO.Compression;
using System.Text;
using ScreenStats.Counting.Diagnostics;
using ScreenStats.Counting.Ledger;
using ScreenStats.Records.Deidentification.Pseudonyms;
using ScreenStats.Records.Tests.Formats;

namespace ScreenStats.Records.Tests.Deidentification.Pseudonyms;

/// <summary>Every format that is read becomes a file with pseudonyms that reads the same and names nobody.</summary>
public sealed class PseudonymFormatsTests
{
    private const string Secret = "Zzyzx";

    private static readonly string Log = WorkbookParts.Row(1, $"Log of {Secret}") + WorkbookParts.Row(3, "Badge", "Name", "Site", "Date", "Result", "Born")
        + WorkbookParts.Row(4, "E-1", Secret, "North", "", "neg", "").Replace("<c r=\"D4\" t=\"inlineStr\"><is><t></t></is></c>", "<c r=\"D4\"><v>46027.5</v></c>", StringComparison.Ordinal)
        + WorkbookParts.Row(5, " e-2", Secret, "North, \"old\"", "2026-01-05T09:00", "pos") + WorkbookParts.Row(7, "Total", "", "2");

    [Theory]
    [InlineData("log.xlsx")]
    [InlineData("log.xlsx.gz")]
    public void A_workbook_becomes_text_that_is_read_like_the_workbook(string name)
    {
        using var folder = new PseudonymFolder();
        var (text, result) = Write(folder, name, name.EndsWith(".gz", StringComparison.Ordinal) ? Gzip(WorkbookParts.Of(Log)) : WorkbookParts.Of(Log), request => request with { Columns = ["badge"], Drop = ["name"] });

        text.Should().Be($"Badge,Site,Date,Result,Born\n{folder.One("E-1")},North,2026-01-05T12:00,neg,\n{folder.One("E-2")},\"North, \"\"old\"\"\",2026-01-05T09:00,pos,\n");
        result.Rows.Should().Be(2);
        (result.Format, result.Sheet, result.HeadingLine).Should().Be((name.EndsWith(".gz", StringComparison.Ordinal) ? "workbook in gzip" : "workbook", "Log", 3));
        result.Diagnostics.Where(one => one.Severity == Severity.Note).Select(one => (one.Code, one.Line, one.Occurrences)).Should().BeEquivalentTo(
            [(ReadingDiagnostics.LinesBeforeHeadings, (long?)3, 1L), (ReadingDiagnostics.TotalsLine, 7, 1)]);
        result.Diagnostics.Should().NotContain(one => one.Message.Contains(Secret, StringComparison.Ordinal));

        using var program = new TestFolder().With("screening.csv", text);
        TestFolder.Rows(program.Read(), LedgerEntry.Counted).Should().Be(2);
    }

    [Fact]
    public void Of_several_sheets_the_one_with_the_headings_is_read_and_of_several_such_the_one_that_is_named()
    {
        using var folder = new PseudonymFolder();
        var two = TwoSheets(Log, WorkbookParts.Row(1, "something", "else"));
        Write(folder, "log.xlsx", two, request => request with { Columns = ["badge"], Drop = ["name"] }).Result.Sheet.Should().Be("January");

        var both = TwoSheets(Log, Log);
        var act = () => Write(folder, "both.xlsx", both, request => request with { Columns = ["badge"], Drop = ["name"] });
        act.Should().Throw<UnusableDataException>().Which.Diagnostics.Should().ContainSingle().Which.Should()
            .Match<Diagnostic>(one => one.Code == ReadingDiagnostics.AmbiguousSheets && one.Message.Contains("Say with --sheet", StringComparison.Ordinal));
        Write(folder, "named.xlsx", both, request => request with { Columns = ["badge"], Drop = ["name"], Sheet = "February" }).Result.Sheet.Should().Be("February");
        act = () => Write(folder, "wrong.xlsx", both, request => request with { Columns = ["badge"], Sheet = "March" });
        act.Should().Throw<UnusableDataException>().Which.Diagnostics.Should().ContainSingle().Which.Code.Should().Be(ReadingDiagnostics.MissingSheet);
    }

    [Fact]
    public void Merged_headings_and_repeated_headings_are_refused_as_by_the_reader()
    {
        using var folder = new PseudonymFolder();
        Refused(folder, "merged.xlsx", WorkbookParts.Of(Log, after: "<mergeCells count=\"1\"><mergeCell ref=\"C3:D3\"/></mergeCells>")).Code.Should().Be(ReadingDiagnostics.MergedHeadings);
        Refused(folder, "twice.csv", "badge,note,Note\nE-1,a,b\n"u8.ToArray()).Code.Should().Be(ReadingDiagnostics.RepeatedHeading);
    }

    [Fact]
    public void Text_in_gzip_is_read_also_where_it_is_UTF_16()
    {
        using var folder = new PseudonymFolder();
        byte[] wide = [.. Encoding.Unicode.GetPreamble(), .. Encoding.Unicode.GetBytes("badge;site\nE-1;Süd\nSumme;1\n")];
        var (text, result) = Write(folder, "log.csv.gz", Gzip(wide), request => request with { Columns = ["badge"] });
        text.Should().Be($"badge;site\n{folder.One("E-1")};Süd\n");
        result.Format.Should().Be("delimited text in gzip");
        result.TotalsDropped.Should().Be(1);
    }

    [Fact]
    public void Of_resources_only_the_columns_that_are_read_are_written_and_nothing_else_of_them_stays()
    {
        string Resource(string person, string result, string more) =>
            $"{{\"resourceType\":\"Observation\",\"id\":\"{Secret}-id\",\"identifier\":[{{\"value\":\"{Secret}\"}}],\"status\":\"final\",{more}\"subject\":{{\"reference\":\"Patient/{person}\",\"display\":\"{Secret}\",\"identifier\":{{\"value\":\"{Secret}\"}}}},"
            + $"\"performer\":[{{\"display\":\"{Secret}\"}}],\"note\":[{{\"text\":\"{Secret}\"}}],\"contained\":[{{\"resourceType\":\"Patient\",\"name\":[{{\"family\":\"{Secret}\"}}]}}],\"specimen\":{{\"display\":\"{Secret}\"}},\"encounter\":{{\"reference\":\"Encounter/{Secret}\"}},"
            + $"\"extension\":[{{\"url\":\"http://example.org/{Secret}\",\"valueString\":\"{Secret}\"}}],\"text\":{{\"div\":\"{Secret}\"}},\"effectiveDateTime\":\"2026-01-05T20:00:00Z\",\"valueString\":\"{result}\"}}\n";
        var lines = Resource("E-1", "positive", "") + Resource("E-2", "not detected", "\"method\":{\"text\":\"told to Maria by telephone\"},") + Resource("E-3", "pos", "").Replace("final", "preliminary", StringComparison.Ordinal)
            + Resource("E-4", $"call {string.Concat(Enumerable.Repeat(Secret, 20))}", "") + "{\"" + Secret + "\n";
        using var folder = new PseudonymFolder();

        var (text, result) = Write(folder, "lab.ndjson.gz", Gzip(Encoding.UTF8.GetBytes(lines)), request => request with { Columns = ["Person"], Generalise = [("collected_at", DatePrecision.Day)] });

        text.Should().Be("person,collected_at,result,reported_at,method\n" + $"{folder.One("E-1")},2026-01-05,positive,,\n{folder.One("E-2")},2026-01-05,not detected,,\n{folder.One("E-4")},2026-01-05,,,\n");
        (result.Rows, result.ResourcesDropped, result.HeadingLine).Should().Be((3, 2, null));
        result.Columns.Select(column => column.Heading).Should().Equal("person", "collected_at", "result", "reported_at", "method");
        result.Diagnostics.Select(one => (one.Code, one.Line, one.Occurrences)).Should().BeEquivalentTo(
            [(ReadingDiagnostics.MalformedLine, (long?)5, 1L), (ReadingDiagnostics.ResultNotFinal, 3, 1), (PrivacyDiagnostics.TextLeftOut, 2, 2)]);
        result.Diagnostics.Should().NotContain(one => one.Message.Contains(Secret, StringComparison.Ordinal) || one.Message.Contains("Maria", StringComparison.Ordinal));
    }

    [Fact]
    public void The_same_person_is_the_same_in_a_workbook_and_in_resources()
    {
        using var folder = new PseudonymFolder();
        var log = Write(folder, "log.xlsx", WorkbookParts.Of(Log), request => request with { Columns = ["badge"], Drop = ["name"] }).Text;
        var lab = Write(folder, "lab.ndjson", "{\"resourceType\":\"Observation\",\"status\":\"final\",\"subject\":{\"reference\":\"Patient/e-2\"},\"effectiveDateTime\":\"2026-01-05T12:00:00\",\"valueString\":\"positive\"}\n"u8.ToArray(), request => request with { Columns = ["person"] }).Text;
        using var program = new TestFolder().With("screening.csv", log).With("confirmatory.csv", lab);
        program.Read().Tally.Cells.Screens.Should().Contain(cell => cell.FollowUp == ScreenStats.Counting.Cubes.FollowUp.Confirmed);
    }

    [Theory]
    [InlineData("result", "--columns person")]
    [InlineData("patient", "--columns person")]
    [InlineData("person,patient", "none called \"patient\"")]
    public void Resources_without_their_people_named_are_refused(string columns, string message)
    {
        using var folder = new PseudonymFolder();
        var act = () => Write(folder, "lab.ndjson", "{}\n"u8.ToArray(), request => request with { Columns = [.. columns.Split(',')] });
        act.Should().Throw<PseudonymizeException>().WithMessage($"*{message}*");
    }

    [Theory]
    [InlineData("badge,site,collected_at,result\nE-1,North,2026-01-05,neg\nTotal,1,,\n", 1)]
    [InlineData("badge,site,collected_at,result\nE-1,North,2026-01-05,neg\nTotal: 1\n\n", 1)]
    [InlineData("badge,site,collected_at,result\nE-1,North,2026-01-05,neg\nTotal,1,2,3,4,5\n", 1)]
    [InlineData("badge,site,collected_at,result\nE-1,North,2026-01-05,neg\nGesamt,North,12,1\n,,,\n", 2)]
    [InlineData("site,badge,collected_at,result\nTotal,E-1,2026-01-05,neg\nTotal,E-2,13/01/2026,neg\n", 2)]
    [InlineData("clock no,badge\nTotal,E-1\nE-1,E-2\nTotal,\n", 2)]
    [InlineData("worker,badge\nTotal,E-1\nE-1,E-2\nTotals,\n", 2)]
    public void A_line_of_totals_gets_no_pseudonym_and_a_whole_row_is_none_whatever_it_is_called(string source, long rows)
    {
        using var folder = new PseudonymFolder();
        var text = folder.Of(source, "badge");
        folder.Result!.Rows.Should().Be(rows);
        var lost = source.Contains("E-2,13/", StringComparison.Ordinal) ? 0 : 1;
        folder.Result.TotalsDropped.Should().Be(lost);
        text.Split('\n').Count(line => line.Contains("p1-", StringComparison.Ordinal)).Should().Be(source.Contains("E-2", StringComparison.Ordinal) ? 2 : 1);
    }

    [Theory]
    [InlineData("out.xlsx")]
    [InlineData("out.csv.gz")]
    [InlineData("out.ndjson")]
    public void A_result_that_its_name_would_belie_is_refused(string name)
    {
        using var folder = new PseudonymFolder();
        var request = folder.Request("badge\nE-1\n"u8.ToArray(), "badge");
        var act = () => Pseudonymizer.Write(request with { Target = Path.Combine(folder.Root, name) });
        act.Should().Throw<PseudonymizeException>().WithMessage($"{name} would be CSV*");
        folder.Left().Should().BeEmpty();
    }

    [Fact]
    public void A_file_of_which_nothing_is_to_be_read_leaves_neither_result_nor_key()
    {
        using var folder = new PseudonymFolder();
        Refused(folder, "lab.ndjson", "{}\n"u8.ToArray(), "person").Code.Should().Be(ReadingDiagnostics.NothingUsable);
        folder.Left().Should().Equal("lab.ndjson");
    }

    private static Diagnostic Refused(PseudonymFolder folder, string name, byte[] bytes, string column = "badge")
    {
        var act = () => Write(folder, name, bytes, request => request with { Columns = [column] });
        return act.Should().Throw<UnusableDataException>().Which.Diagnostics.Should().ContainSingle().Subject;
    }

    private static (string Text, PseudonymizeResult Result) Write(PseudonymFolder folder, string name, byte[] bytes, Func<PseudonymizeRequest, PseudonymizeRequest> asked)
    {
        var source = Path.Combine(folder.Root, name);
        File.WriteAllBytes(source, bytes);
        var request = asked(new PseudonymizeRequest { Source = source, Target = source + ".out.csv", KeyFile = folder.KeyFile });
        var result = Pseudonymizer.Write(request);
        return (File.ReadAllText(request.Target), result);
    }

    private static byte[] TwoSheets(string first, string second) => WorkbookParts.Zip(
    [
        .. WorkbookParts.Frame(false).Select(part => (part.Name, part.Name switch
        {
            "xl/workbook.xml" => part.Text.Replace("<sheet name=\"Log\" sheetId=\"1\" r:id=\"r1\"/>", "<sheet name=\"January\" sheetId=\"1\" r:id=\"r1\"/><sheet name=\"February\" sheetId=\"2\" r:id=\"r2\"/>", StringComparison.Ordinal),
            "xl/_rels/workbook.xml.rels" => part.Text.Replace("</Relationships>", "<Relationship Id=\"r2\" Type=\"http://schemas.openxmlformats.org/officeDocument/2006/relationships/worksheet\" Target=\"worksheets/sheet2.xml\"/></Relationships>", StringComparison.Ordinal),
            _ => part.Text,
        })),
        ("xl/worksheets/sheet1.xml", WorkbookParts.Sheet(first)), ("xl/worksheets/sheet2.xml", WorkbookParts.Sheet(second)),
    ]);

    private static byte[] Gzip(byte[] bytes)
    {
        using var packed = new MemoryStream();
        using (var gzip = new GZipStream(packed, CompressionLevel.Fastest)) gzip.Write(bytes);
        return packed.ToArray();
    }
}
