using System.Globalization;
using System.IO.Compression;
using System.Security.Cryptography;
using System.Text;
using ScreenStats.Counting.Diagnostics;
using ScreenStats.Counting.Ledger;
using ScreenStats.Counting.Programs;
using ScreenStats.Records.Formats;
using ScreenStats.Records.Formats.Converting;

namespace ScreenStats.Records.Tests.Formats;

public class ConvertedFileTests
{
    private const string Rows = "p1,North,2026-01-05T08:00,neg\np2,North,2026-01-05T08:05,pos\n";

    [Fact]
    public void Inputs_carry_the_SHA_256_and_the_length_of_the_file_as_it_was_found()
    {
        var bytes = Gzip(TestFolder.Headings + Rows);
        using var folder = new TestFolder().With("screening.csv.gz", bytes);
        folder.Read().Inputs.Should().ContainSingle().Which.Should().Be(
            new InputFile("screening.csv.gz", ExportKind.Screening, bytes.Length, Convert.ToHexStringLower(SHA256.HashData(bytes))));
    }

    [Fact]
    public void What_files_are_turned_into_is_private_and_gone_after_reading_and_after_failing()
    {
        using var private1 = new PrivateFolder();
        string path;
        using (private1.Create(out path))
        {
            if (!OperatingSystem.IsWindows())
            {
                File.GetUnixFileMode(path).Should().Be(UnixFileMode.UserRead | UnixFileMode.UserWrite);
                File.GetUnixFileMode(private1.Path!).Should().Be(UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute);
            }
        }

        private1.Dispose();
        File.Exists(path).Should().BeFalse();
        Directory.Exists(Path.GetDirectoryName(path)).Should().BeFalse();
    }

    [Theory]
    [InlineData("p2,\"North,2026-01-05,neg\n", typeof(UnusableDataException))]
    [InlineData("p2,North,13/01/2026,neg\n", null)]
    [InlineData("", typeof(OperationCanceledException))]
    public void The_folder_goes_whatever_happens_to_the_reading(string more, Type? thrown)
    {
        using var folder = new TestFolder().With("screening.csv.gz", Gzip(TestFolder.Headings + Rows + more));
        var seen = new List<string>();
        var progress = new Told(() =>
        {
            seen.AddRange(OfThisProcess());
            if (thrown == typeof(OperationCanceledException)) throw new OperationCanceledException();
        });
        var read = () => folder.Read(options: new ReadOptions { Threads = 1, Progress = progress });
        if (thrown is null) read.Should().NotThrow();
        else read.Should().Throw<Exception>().Which.Should().BeAssignableTo(thrown);
        seen.Should().NotBeEmpty("else this test looks in the wrong place");

        // This reading has ended, so what it left would stay; a folder that another test has just made is given time to go.
        foreach (var made in seen.Distinct()) SpinWait.SpinUntil(() => !Directory.Exists(made), TimeSpan.FromSeconds(30)).Should().BeTrue();

        // Only folders that hold the numbered files of a conversion.
        IEnumerable<string> OfThisProcess() => Directory.EnumerateDirectories(Path.GetTempPath(), "screenstats-*")
            .Where(one => File.Exists(Path.Combine(one, "1")) && Same(Path.Combine(one, "1")));
        bool Same(string file)
        {
            try
            {
                return new FileInfo(file).Length == 0 || File.ReadAllText(file).StartsWith(TestFolder.Headings + Rows + more, StringComparison.Ordinal);
            }
            catch (IOException)
            {
                return false;
            }
        }
    }

    [Fact]
    public void A_compressed_file_that_stops_being_UTF_8_far_behind_its_beginning_is_read_again()
    {
        var text = new StringBuilder(TestFolder.Headings);
        for (var i = 0; i < 60_000; i++) text.Append(CultureInfo.InvariantCulture, $"p{i},North,2026-01-05T08:00,neg\n");
        text.Append("p1,Nörd,2026-01-05T09:00,pos\n");
        using var folder = new TestFolder().With("screening.csv.gz", Gzip(CodePagesEncodingProvider.Instance.GetEncoding(1252)!.GetBytes(text.ToString())));
        var reading = folder.Read();
        TestFolder.Outcomes(reading).Should().Equal(60_000, 1, 0, 0);
        reading.Tally.Cells.Screens.Should().Contain(cell => cell.Site == "Nörd");
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Lines_that_end_with_CR_alone_are_cut_into_blocks_too(bool quoted)
    {
        var text = new StringBuilder(TestFolder.Headings);
        for (var i = 0; i < 100_000; i++) text.Append(CultureInfo.InvariantCulture, $"p{i},{(quoted && i % 7 == 0 ? "\"Nor\nth\"" : "North")},{(i == 90_000 ? "soon" : "2026-01-05T08:00")},neg\n");
        var bytes = Encoding.UTF8.GetBytes(text.ToString().Replace("Nor\nth", "Nor;th", StringComparison.Ordinal).Replace('\n', '\r').Replace("Nor;th", "Nor\rth", StringComparison.Ordinal));
        using var folder = new TestFolder().With("screening.csv", bytes);
        foreach (var threads in new[] { 1, 3 })
        {
            var reading = folder.Read(options: new ReadOptions { Threads = threads });
            TestFolder.Rows(reading).Should().Be(100_000);
            reading.SetAside.Should().ContainSingle().Which.Line.Should().Be(90_002 + (quoted ? (90_000 + 6) / 7 : 0));
        }
    }

    [Fact]
    public void Duplicates_are_verified_in_every_format_and_named_by_their_place_in_the_original()
    {
        string[][] rows = [["p1", "North", "2026-01-05T08:00", "neg"], ["p2", "No\nrth", "2026-01-05T08:05", "pos"], ["p1", "North", "2026-01-05T08:00", "neg"], ["p2", "No\nrth", "2026-01-05T08:05", "pos"]];
        var sheet = WorkbookParts.Row(3, "person", "site", "collected_at", "result") + string.Concat(rows.Select((row, at) => WorkbookParts.Row(5 + (2 * at), row)));
        using var folder = new TestFolder().With("screening.xlsx", WorkbookParts.Of(sheet))
            .With("confirmatory.ndjson", string.Concat(Enumerable.Repeat("\n{\"resourceType\":\"Observation\",\"status\":\"final\",\"subject\":{\"reference\":\"Patient/p2\"},\"effectiveDateTime\":\"2026-01-05T09:00:00Z\",\"valueString\":\"positive\",\"method\":{\"text\":\"in two\\nlines\"}}\n", 2)));
        var reading = folder.Read(new ProgramSettings { TimeZone = "Europe/Vienna" });
        reading.SetAside.Select(row => (row.File, row.Line, row.Code, row.FirstLine)).Should().Equal(
            ("screening.xlsx", 9, "duplicate", 5), ("screening.xlsx", 11, "duplicate", 7), ("confirmatory.ndjson", 4, "duplicate", 2));
    }

    [Fact]
    public void Lines_of_what_is_read_lead_back_to_the_original()
    {
        var map = new LineMap();
        map.Of(5).Should().Be(5);
        (long Line, long Source)[] places = [(1, 4), (2, 5), (3, 7), (6, 8), (7, 9), (9, 9)];
        foreach (var (line, source) in places) map.Add(line, source);
        foreach (var (line, source) in places) map.Of(line).Should().Be(source);
    }

    [Fact]
    public void No_message_about_a_workbook_or_a_resource_repeats_a_cell()
    {
        const string Secret = "Zzyzx";
        var sheet = WorkbookParts.Row(1, "person", "site", "collected_at", "result", "specimen") + WorkbookParts.Row(2, "p1", "North", Secret, "neg", Secret)
            + WorkbookParts.Row(3, "p2", "North", "2026-01-05", Secret, "") + WorkbookParts.Row(4, "p3", "North", "2026-01-05", "neg", Secret) + "<row r=\"6\"><c r=\"A6\" t=\"e\"><v>#" + Secret + "</v></c></row>";
        using var folder = new TestFolder().With("screening.xlsx", WorkbookParts.Of(sheet))
            .With("confirmatory.ndjson", $"{{\"{Secret}\"\n{{\"resourceType\":\"{Secret}\"}}\n{{\"resourceType\":\"Observation\",\"status\":\"{Secret}\"}}\n"
                + $"{{\"resourceType\":\"Observation\",\"status\":\"final\",\"subject\":{{\"display\":\"{Secret}\",\"reference\":\"Patient/x\"}},\"effectiveDateTime\":\"{Secret}\",\"valueString\":\"{Secret}\"}}\n"
                + "{\"resourceType\":\"Observation\",\"status\":\"final\",\"subject\":{\"reference\":\"Patient/p3\"},\"effectiveDateTime\":\"2026-01-05\",\"valueString\":\"neg\"}\n");
        var reading = folder.Read();
        reading.SetAside.Should().HaveCount(7);
        reading.Diagnostics.Select(found => found.Message).Concat(reading.SetAside.Select(row => row.Reason + row.Text))
            .Concat(reading.Understanding.SelectMany(export => export.Columns).SelectMany(column => column.Words).Select(word => word.Word))
            .Should().NotContain(text => text.Contains(Secret, StringComparison.OrdinalIgnoreCase));
    }

    private static byte[] Gzip(string text) => Gzip(Encoding.UTF8.GetBytes(text));

    private static byte[] Gzip(byte[] bytes)
    {
        using var packed = new MemoryStream();
        using (var gzip = new GZipStream(packed, CompressionLevel.Fastest)) gzip.Write(bytes);
        return packed.ToArray();
    }

    private sealed class Told(Action what) : IProgress<ReadProgress>
    {
        public void Report(ReadProgress value) => what();
    }
}
