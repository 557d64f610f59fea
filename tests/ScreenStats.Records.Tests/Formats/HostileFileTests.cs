using System.Buffers.Binary;
using System.Diagnostics;
using System.IO.Compression;
using System.Text;
using ScreenStats.Counting.Diagnostics;
using ScreenStats.Counting.Programs;

namespace ScreenStats.Records.Tests.Formats;

public class HostileFileTests
{
    private const string Rows = "p1,North,2026-01-05T08:00,neg\n";

    private static readonly string Headings = WorkbookParts.Row(1, "person", "site", "collected_at", "result");
    private static readonly string FirstRow = WorkbookParts.Row(2, "p1", "North", "2026-01-05", "negative");

    [Theory]
    [InlineData("screening.csv")]
    [InlineData("screening.csv.gz")]
    [InlineData("screening.xlsx")]
    public async Task A_pipe_in_the_folder_is_refused_and_not_waited_for(string name)
    {
        if (OperatingSystem.IsWindows()) return;
        using var folder = new TestFolder();
        using (var made = Process.Start("mkfifo", Path.Combine(folder.Path, name))) await made.WaitForExitAsync(TestContext.Current.CancellationToken);
        var refused = await Task.Run(() => folder.Refused(), TestContext.Current.CancellationToken).WaitAsync(TimeSpan.FromSeconds(20), TestContext.Current.CancellationToken);
        refused.Should().ContainSingle().Which.Code.Should().Be(ReadingDiagnostics.EmptyFile);
    }

    [Fact]
    public void Names_of_a_hundred_kilobytes_are_not_kept_and_lose_no_row()
    {
        // Three hundred lots of 100 kB took 8.7 GB: every name stands in the tables of the report.
        var names = Enumerable.Range(0, 50).Select(i => new string('L', 100_000) + i).ToList();
        using var folder = new TestFolder().With("screening.csv", "person,site,lot,kit,operator,collected_at,result\n" + string.Concat(names.Select((name, at) =>
            $"p{at},{(at == 0 ? name : "North")},{name},{name},{name},2026-01-05T08:{at:00},negative\n")));

        var read = folder.Read();

        read.Tally.Cells.Screens.Should().OnlyContain(cell => cell.Site == "North" && cell.Lot == "(none)").And.ContainSingle().Which.Runs.Should().Be(49);
        read.Tally.Cells.Operators.Should().OnlyContain(cell => cell.Operator == "(none)");
        read.SetAside.Should().ContainSingle().Which.Code.Should().Be(ReadingDiagnostics.NameTooLong);
        read.Diagnostics.Where(one => one.Code == ReadingDiagnostics.NameTooLong).Select(one => (one.Column, one.Occurrences)).Should().BeEquivalentTo([("site", 1L), ("lot", 50L), ("kit", 50L), ("operator", 50L)]);
        read.Diagnostics.Should().OnlyContain(one => one.Message.Length < 600);
    }

    [Fact]
    public void A_gzip_bomb_stops_long_before_it_has_unpacked()
    {
        using var packed = new MemoryStream();
        using (var gzip = new GZipStream(packed, CompressionLevel.Optimal, leaveOpen: true))
        {
            gzip.Write(Encoding.UTF8.GetBytes(TestFolder.Headings));
            var blank = new byte[1 << 20];
            blank.AsSpan().Fill((byte)'\n');
            for (var i = 0; i < 400; i++) gzip.Write(blank);
        }

        using var folder = new TestFolder().With("screening.csv.gz", packed.ToArray());
        folder.Refused().Should().ContainSingle().Which.Code.Should().Be(ReadingDiagnostics.SuspiciousArchive);
    }

    [Fact]
    public void A_workbook_that_unpacks_to_a_gigabyte_stops_before_any_of_it_is_read()
    {
        using var folder = new TestFolder().With("screening.xlsx", Bomb());
        var before = GC.GetAllocatedBytesForCurrentThread();
        // Its rows are more than a sheet has, which is seen before its length.
        folder.Refused().Should().ContainSingle().Which.Code.Should().BeOneOf(ReadingDiagnostics.SuspiciousArchive, ReadingDiagnostics.UnreadableWorkbook);
        (GC.GetAllocatedBytesForCurrentThread() - before).Should().BeLessThan(32 << 20);
    }

    [Fact]
    public void A_workbook_that_lies_about_the_length_of_a_part_is_stopped_while_it_unpacks()
    {
        var bytes = Bomb();
        // The central directory is what readers believe: a length of 1,000 for every part.
        var at = bytes.AsSpan().IndexOf("PK\u0001\u0002"u8);
        while (at < bytes.Length - 4 && bytes.AsSpan(at).StartsWith("PK\u0001\u0002"u8))
        {
            BinaryPrimitives.WriteUInt32LittleEndian(bytes.AsSpan(at + 24), 1000);
            at += 46 + BinaryPrimitives.ReadUInt16LittleEndian(bytes.AsSpan(at + 28)) + BinaryPrimitives.ReadUInt16LittleEndian(bytes.AsSpan(at + 30)) + BinaryPrimitives.ReadUInt16LittleEndian(bytes.AsSpan(at + 32));
        }

        using var folder = new TestFolder().With("screening.xlsx", bytes);
        var before = GC.GetAllocatedBytesForCurrentThread();
        folder.Refused().Should().ContainSingle().Which.Severity.Should().Be(Severity.Error);
        (GC.GetAllocatedBytesForCurrentThread() - before).Should().BeLessThan(64 << 20);
    }

    public static TheoryData<string, string, string?, string, string> Sheets => new()
    {
        { "a row far behind the end of a sheet", Headings + FirstRow + "<row r=\"2000000000\"><c><v>1</v></c></row>", null, "", "" },
        { "a column behind the last", Headings + "<row r=\"2\"><c r=\"ZZZZ2\"><v>1</v></c></row>", null, "", "" },
        { "the same row twice", Headings + FirstRow + FirstRow, null, "", "" },
        { "the same cell twice", Headings + "<row r=\"2\"><c r=\"A2\"><v>1</v></c><c r=\"A2\"><v>2</v></c></row>", null, "", "" },
        { "a cell of another row", Headings + "<row r=\"2\"><c r=\"A3\"><v>1</v></c></row>", null, "", "" },
        { "a shared text that is not there", Headings + "<row r=\"2\"><c r=\"A2\" t=\"s\"><v>5</v></c></row>", "<si><t>p1</t></si>", "", "" },
        { "a shared text without a number", Headings + "<row r=\"2\"><c r=\"A2\" t=\"s\"><v>x</v></c></row>", "<si><t>p1</t></si>", "", "" },
        { "a text of two megabytes", Headings + WorkbookParts.Row(2, new string('x', 2 << 20)), null, "", "" },
        { "characters that mean something else", Headings + "<row r=\"2\"><c r=\"A2\" t=\"inlineStr\"><is><t><![CDATA[p1]]></t></is></c></row>", null, "", "" },
        { "hundreds of thousands of merged cells", Headings + FirstRow, null, "", "<mergeCells>" + string.Concat(Enumerable.Repeat("<mergeCell ref=\"A9:B9\"/>", 250_000)) + "</mergeCells>" },
        { "rows without an end", Headings + "<row r=\"2\"><c r=\"A2\">", null, "", "" },
    };

    [Theory]
    [MemberData(nameof(Sheets))]
    public void A_sheet_that_no_program_writes_is_one_message(string what, string rows, string? shared, string before, string after)
    {
        using var folder = new TestFolder().With("screening.xlsx", WorkbookParts.Of(rows, shared, before, after));
        var clock = Stopwatch.StartNew();
        var found = folder.Refused().Should().ContainSingle(what).Subject;
        found.Code.Should().BeOneOf(ReadingDiagnostics.UnreadableWorkbook, ReadingDiagnostics.SuspiciousArchive);
        found.Message.Should().StartWith("screening.xlsx ");
        clock.Elapsed.Should().BeLessThan(TimeSpan.FromMinutes(1), "this is a bound, not a speed");
    }

    [Fact]
    public void A_declared_entity_is_never_unfolded()
    {
        const string Laughs = "<?xml version=\"1.0\"?><!DOCTYPE worksheet [<!ENTITY a \"aaaaaaaaaa\"><!ENTITY b \"&a;&a;&a;&a;&a;&a;&a;&a;&a;&a;\"><!ENTITY c \"&b;&b;&b;&b;&b;&b;&b;&b;&b;&b;\">]>";
        using var folder = new TestFolder().With("screening.xlsx",
            WorkbookParts.Zip([.. WorkbookParts.Frame(false), ("xl/worksheets/sheet1.xml", Laughs + WorkbookParts.Sheet(Headings + WorkbookParts.Row(2, "&c;")))]));
        folder.Refused().Should().ContainSingle().Which.Code.Should().Be(ReadingDiagnostics.UnreadableWorkbook);
    }

    [Fact]
    public void One_long_text_that_a_million_cells_refer_to_fills_no_disk()
    {
        var text = new string('x', 100_000);
        var rows = Headings + string.Concat(Enumerable.Range(2, 60_000).Select(row => $"<row r=\"{row}\"><c r=\"A{row}\" t=\"s\"><v>0</v></c></row>"));
        using var folder = new TestFolder().With("screening.xlsx", WorkbookParts.Of(rows, $"<si><t>{text}</t></si>"));
        var found = folder.Refused().Should().ContainSingle().Subject;
        found.Code.Should().Be(ReadingDiagnostics.SuspiciousArchive, "six gigabytes of text would come out");
        found.Message.Should().StartWith("The cells of screening.xlsx hold more than");
    }

    [Fact]
    public void Shared_texts_of_hundreds_of_megabytes_are_not_held_in_memory()
    {
        using var stream = new MemoryStream();
        using (var archive = new ZipArchive(stream, ZipArchiveMode.Create, leaveOpen: true))
        {
            foreach (var (name, text) in WorkbookParts.Frame(true).Append(("xl/worksheets/sheet1.xml", WorkbookParts.Sheet(Headings + FirstRow))))
            {
                using var part = archive.CreateEntry(name).Open();
                part.Write(Encoding.UTF8.GetBytes(text));
            }

            using var shared = archive.CreateEntry("xl/sharedStrings.xml", CompressionLevel.Fastest).Open();
            shared.Write("<sst xmlns=\"http://schemas.openxmlformats.org/spreadsheetml/2006/main\">"u8);
            var random = new Random(1);
            for (var i = 0; i < 200; i++)
            {
                // Poorly packed, so that it is the length that is refused and not the share.
                shared.Write(Encoding.UTF8.GetBytes(string.Concat(Enumerable.Range(0, 16_384).Select(_ => $"<si><t>{random.Next():x8}{random.Next():x8}{random.Next():x8}{random.Next():x8}{random.Next():x8}</t></si>"))));
            }

            shared.Write("</sst>"u8);
        }

        using var folder = new TestFolder().With("screening.xlsx", stream.ToArray());
        var before = GC.GetAllocatedBytesForCurrentThread();
        folder.Refused().Should().ContainSingle().Which.Code.Should().Be(ReadingDiagnostics.SuspiciousArchive);
        (GC.GetAllocatedBytesForCurrentThread() - before).Should().BeLessThan(512L << 20, "the scan reads them piece by piece and stops");
    }

    [Theory]
    [InlineData("../../outside.xml")]
    [InlineData("/tmp/outside.xml")]
    [InlineData("xl\\..\\..\\outside.xml")]
    public void A_part_whose_name_leads_out_of_the_workbook_is_written_nowhere(string name)
    {
        using var folder = new TestFolder();
        var inner = Path.Combine(folder.Path, "a", "b");
        Directory.CreateDirectory(inner);
        File.WriteAllBytes(Path.Combine(inner, "screening.xlsx"), WorkbookParts.Zip([.. WorkbookParts.Frame(false), ("xl/worksheets/sheet1.xml", WorkbookParts.Sheet(Headings + FirstRow)), (name, "<evil/>")]));
        TestFolder.Rows(new ProgramReader().Read(new ProgramSettings(), inner)).Should().Be(1);
        Directory.EnumerateFileSystemEntries(folder.Path, "*", SearchOption.AllDirectories).Where(File.Exists).Should().ContainSingle("the workbook alone");
        File.Exists("/tmp/outside.xml").Should().BeFalse();
    }

    [Theory]
    [InlineData("Target=\"../../../screening-secret.xml\"")]
    [InlineData("Target=\"file:///etc/hostname\" TargetMode=\"External\"")]
    [InlineData("Target=\"http://127.0.0.1:9/sheet.xml\" TargetMode=\"External\"")]
    public void A_sheet_that_lies_outside_of_the_workbook_is_not_looked_for(string target)
    {
        using var folder = new TestFolder().With("screening-secret.xml", WorkbookParts.Sheet(Headings + FirstRow)).With("screening.xlsx", WorkbookParts.Zip(
            [.. WorkbookParts.Frame(false).Select(part => (part.Name, part.Text.Replace("Target=\"worksheets/sheet1.xml\"", target, StringComparison.Ordinal)))]));
        var read = () => folder.Read();
        read.Should().Throw<UnusableDataException>().Which.Diagnostics.Should().Contain(one => one.Severity == Severity.Error && one.File == "screening.xlsx");
    }

    [Fact]
    public void A_line_of_resources_of_a_hundred_megabytes_is_one_message()
    {
        using var folder = new TestFolder().With("screening.csv", TestFolder.Headings + Rows);
        using (var stream = File.Create(Path.Combine(folder.Path, "confirmatory.ndjson")))
        {
            stream.Write("{\"resourceType\":\"Observation\"}\n{\"note\":\""u8);
            var part = new byte[1 << 20];
            part.AsSpan().Fill((byte)'x');
            for (var i = 0; i < 100; i++) stream.Write(part);
        }

        var before = GC.GetAllocatedBytesForCurrentThread();
        var found = folder.Refused().Should().ContainSingle().Subject;
        (found.Code, found.Line).Should().Be((ReadingDiagnostics.RecordTooLong, 2));
        (GC.GetAllocatedBytesForCurrentThread() - before).Should().BeLessThan(32 << 20, "the line is never held whole");
    }

    [Fact]
    public void A_resource_that_nests_without_end_is_one_line_set_aside()
    {
        var nested = string.Concat(Enumerable.Repeat("{\"a\":", 5000)) + "1" + new string('}', 5000);
        using var folder = new TestFolder().With("screening.csv", TestFolder.Headings.Replace("\n", "\n" + Rows, StringComparison.Ordinal))
            .With("confirmatory.ndjson", nested + "\n" + "{\"resourceType\":\"Observation\",\"status\":\"final\",\"subject\":{\"reference\":\"Patient/p1\"},\"effectiveDateTime\":\"2026-01-05\",\"valueString\":\"positive\"}\n");
        folder.Read().SetAside.Should().ContainSingle().Which.Should().Match<SetAsideRow>(row => row.Code == ReadingDiagnostics.MalformedLine && row.Line == 1);
    }

    [Fact]
    public void Links_are_followed_inside_the_folder_and_refused_where_they_lead_out()
    {
        if (OperatingSystem.IsWindows()) return;
        using var outside = new TestFolder().With("secret.csv", TestFolder.Headings + Rows);
        using var folder = new TestFolder();
        Directory.CreateDirectory(Path.Combine(folder.Path, "raw"));
        File.WriteAllText(Path.Combine(folder.Path, "raw", "log.csv"), TestFolder.Headings + Rows);
        File.CreateSymbolicLink(Path.Combine(folder.Path, "screening.csv"), Path.Combine("raw", "log.csv"));
        TestFolder.Rows(folder.Read()).Should().Be(1);

        File.CreateSymbolicLink(Path.Combine(folder.Path, "confirmatory.csv"), Path.Combine(outside.Path, "secret.csv"));
        folder.Refused().Should().ContainSingle().Which.Code.Should().Be(ReadingDiagnostics.FileOutsideFolder);
        File.Delete(Path.Combine(folder.Path, "confirmatory.csv"));

        Directory.CreateSymbolicLink(Path.Combine(folder.Path, "logs"), outside.Path);
        var named = TestFolder.Screening(new ExportSettings { Files = ["logs/secret.csv"] });
        folder.Refused(named).Should().ContainSingle().Which.Code.Should().Be(ReadingDiagnostics.FileOutsideFolder);

        // The program's folder itself may be reached through a link.
        var link = Path.Combine(outside.Path, "program");
        Directory.CreateSymbolicLink(link, folder.Path);
        TestFolder.Rows(new ProgramReader().Read(new ProgramSettings(), link)).Should().Be(1);
    }

    [Theory]
    [InlineData("../screening.csv")]
    [InlineData("a/../../screening.csv")]
    [InlineData("a\\..\\..\\screening.csv")]
    [InlineData("/etc/hostname")]
    [InlineData("C:\\exports\\screening.csv")]
    [InlineData("\\\\server\\exports\\*.csv")]
    public void Names_that_lead_out_of_the_folder_are_refused(string name)
    {
        using var folder = new TestFolder().With("screening.csv", TestFolder.Headings + Rows);
        var found = folder.Refused(TestFolder.Screening(new ExportSettings { Files = [name] })).Should().ContainSingle().Subject;
        found.Code.Should().Be(ReadingDiagnostics.FileOutsideFolder);
        found.Message.Should().Contain(name);
    }

    private static byte[] Bomb()
    {
        using var stream = new MemoryStream();
        using (var archive = new ZipArchive(stream, ZipArchiveMode.Create, leaveOpen: true))
        {
            foreach (var (name, text) in WorkbookParts.Frame(false))
            {
                using var part = archive.CreateEntry(name).Open();
                part.Write(Encoding.UTF8.GetBytes(text));
            }

            using var sheet = archive.CreateEntry("xl/worksheets/sheet1.xml", CompressionLevel.Fastest).Open();
            sheet.Write(Encoding.UTF8.GetBytes(WorkbookParts.Sheet(Headings + FirstRow).Replace("</sheetData></worksheet>", "", StringComparison.Ordinal)));
            var row = Encoding.UTF8.GetBytes(string.Concat(Enumerable.Repeat("<row></row>", 100_000)));
            for (var i = 0; i < 600; i++) sheet.Write(row);
        }

        return stream.ToArray();
    }
}
