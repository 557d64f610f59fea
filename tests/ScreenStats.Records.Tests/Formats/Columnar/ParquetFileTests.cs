using System.Collections.Immutable;
using System.IO.Compression;
using Parquet;
using ScreenStats.Counting.Diagnostics;
using ScreenStats.Counting.Ledger;
using ScreenStats.Counting.Programs;
using ScreenStats.Records.Formats.Converting;
using ScreenStats.Records.Formats.Converting.Columnar;
using ScreenStats.Records.Understanding;
using ScreenStats.Testing;

namespace ScreenStats.Records.Tests.Formats.Columnar;

public class ParquetFileTests
{
    private const string Headings = "person,site,collected_at,read_at,result,lot,lot_expiry,symptomatic,operator,kit,seen,small,single,double,amount,time,big,nanos\n";

    // What make.cs beside the files writes, as CSV: by hand.
    private const string Rows =
        """"
        p1,North,2026-01-05T08:00:00Z,2026-01-05T08:15:00,neg,A-1,2026-05-31,true,7,00112233-4455-6677-8899-aabbccddeeff,1,1,1.5,2,12.5,09:30:00,0,2026-01-05T08:00:00.000000001
        p2,North,2026-01-05T08:05:30Z,,pos,,,false,,00000000-0000-0000-0000-000000000000,-2,255,,0.1,-0.007,,18446744073709551615,1970-01-01T00:00:00
        "p,3
        ""x""",Süd,2026-01-06T23:59:59.1234Z,2026-01-06T00:00:00.007,neg,A-1,1969-07-01,,-12,00000000-0000-0000-0000-000000000000,2147483647,,0.1,,,00:00:00.001,1,1969-12-31T23:59:59.999999999
        ,North,1969-12-31T23:59:59Z,,inv,B-2,,false,9000000000000,00000000-0000-0000-0000-000000000000,-2147483648,0,3,,100,00:00:00,2,2026-01-05T08:00:00.5

        """";

    [Theory]
    [InlineData("plain.parquet", 1)]
    [InlineData("gzip.parquet", 1)]
    [InlineData("brotli.parquet", 1)]
    [InlineData("lz4.parquet", 1)]
    [InlineData("dictionary-snappy.parquet", 6)]
    [InlineData("second-pages-zstd.parquet", 6)]
    [InlineData("delta.parquet", 40)]
    public void Every_type_encoding_and_compression_that_another_library_writes_is_read_as_its_CSV_would_be(string file, int times)
    {
        foreach (var culture in new[] { "", "de-DE", "tr-TR" })
        {
            using var _ = new Culture(culture);
            Text(Bytes(file)).Should().Be(Headings + string.Concat(Enumerable.Repeat(Rows.ReplaceLineEndings("\n"), times)));
        }
    }

    [Theory]
    [InlineData("Europe/Vienna", "2026-01-05T09:00:00+01:00", "2026-01-07T00:59:59.1234+01:00", "1970-01-01T00:59:59+01:00")]
    [InlineData("America/St_Johns", "2026-01-05T04:30:00-03:30", "2026-01-06T20:29:59.1234-03:30", "1969-12-31T20:29:59-03:30")]
    public void An_instant_has_the_day_that_it_was_in_the_time_zone_of_the_program(string zone, params string[] collected)
    {
        var text = Text(Bytes("plain.parquet"), zone: TimeZoneInfo.FindSystemTimeZoneById(zone));
        foreach (var one in collected) text.Should().Contain($",{one},");
        text.Should().Contain(",2026-01-05T08:15:00,", "because what a clock on the wall showed stays as it was");
    }

    [Theory]
    [InlineData("runs-of-truth.parquet", ReadingDiagnostics.UnsupportedColumn)]
    [InlineData("lz4-hadoop.parquet", ReadingDiagnostics.UnreadableParquet)]
    [InlineData("encrypted.parquet", ReadingDiagnostics.UnreadableParquet)]
    [InlineData("encrypted-plain-footer.parquet", ReadingDiagnostics.UnreadableParquet)]
    public void What_would_be_misread_or_cannot_be_is_refused(string file, string code)
    {
        using var folder = new TestFolder().With("screening.parquet", Bytes(file));
        var refused = folder.Refused().Should().ContainSingle().Which;
        refused.Code.Should().Be(code);
        refused.Message.Should().StartWith(file.StartsWith("runs", StringComparison.Ordinal) ? "In screening.parquet the column \"symptomatic\" holds true and false in runs" : file.StartsWith("lz4", StringComparison.Ordinal) ? "screening.parquet is compressed in a way" : "screening.parquet is encrypted");
    }

    [Fact]
    public void A_nested_column_is_left_out_with_a_warning_and_refused_where_something_is_to_be_read_from_it()
    {
        using var folder = new TestFolder().With("screening.parquet", Bytes("nested.parquet"));
        var reading = folder.Read();
        TestFolder.Outcomes(reading).Should().Equal(1, 1, 0, 0);
        reading.Diagnostics.Where(one => one.Code == ReadingDiagnostics.UnreadColumn).Select(one => one.Message).Should().Equal(
            "In screening.parquet the column \"contacts\" is nested (a list, a map or a structure), and exports are flat. Write each value into a column of its own. Nothing is read from it, so it was left out.",
            "In screening.parquet the column \"photo\" holds bytes and does not say that they are text. Write it as STRING. Nothing is read from it, so it was left out.");
        folder.Refused(TestFolder.Screening(new ExportSettings { Columns = Columns(("lot", "contacts")) })).Should().ContainSingle().Which.Message.Should()
            .Be("In screening.parquet the column \"contacts\" is nested (a list, a map or a structure), and exports are flat. Write each value into a column of its own.");
    }

    [Fact]
    public void The_same_rows_as_CSV_and_as_Parquet_give_the_same_tally()
    {
        using var csv = new TestFolder();
        using var parquet = new TestFolder();
        foreach (var name in new[] { "screening", "confirmatory" })
        {
            var text = File.ReadAllText(Path.Combine(RepositoryRoot.Path, "sample-data", "marrowlight", name + ".csv")).ReplaceLineEndings("\n");
            csv.With(name + ".csv", text);
            parquet.With(name + ".parquet", ParquetBytes.OfCsv(text));
        }

        var settings = new ProgramSettings { TimeZone = "Europe/Vienna" };
        var left = csv.Read(settings);
        var right = parquet.Read(settings);
        right.Tally.Cells.Should().BeEquivalentTo(left.Tally.Cells, options => options.Excluding(cells => cells.Diagnostics), "only the places in messages are others");
        right.Tally.Cells.Diagnostics.Select(one => (one.Code, one.Column, one.Occurrences)).Should().BeEquivalentTo(left.Tally.Cells.Diagnostics.Select(one => (one.Code, one.Column, one.Occurrences)));
        right.SetAside.Select(row => (row.Line, row.FirstLine, row.Code)).Should().Equal(left.SetAside.Select(row => (row.Line - 1, row.FirstLine - 1, row.Code)), "a record is counted without the line of headings");
    }

    [Fact]
    public void The_place_of_a_row_is_its_record()
    {
        const string Csv = TestFolder.Headings + "p1,North,2026-01-05T08:00,neg\np2,North,soon,neg\np1,North,2026-01-05T08:00,neg\n,,,\n";
        using var folder = new TestFolder().With("screening.parquet", ParquetBytes.OfCsv(Csv));
        var reading = folder.Read();
        reading.SetAside.Select(row => (row.Line, row.Code, row.FirstLine)).Should().Equal((2, "unreadable-date", null), (3, "duplicate", 1L), (4, "blank-row", null));
        reading.Diagnostics.Where(one => one.Code == ReadingDiagnostics.UnreadableDate).Should().ContainSingle().Which.Message.Should().Contain("(record 2 of screening.parquet)");
    }

    [Fact]
    public void The_understanding_says_that_it_was_Parquet_and_has_no_line_of_headings()
    {
        using var folder = new TestFolder().With("screening.parquet", ParquetBytes.OfCsv(TestFolder.Headings + "p1,North,2026-01-05T08:00,neg\n"));
        var file = folder.Read().Understanding.Single(export => export.Export == ExportKind.Screening).Files.Should().ContainSingle().Which;
        (file.Format, file.Encoding, file.Delimiter, file.HeadingLine, file.Rows).Should().Be(("Parquet", null, null, null, 1));
    }

    [Fact]
    public void A_row_that_reads_like_headings_is_a_row()
    {
        using var folder = new TestFolder().With("screening.parquet", ParquetBytes.OfCsv("badge,where,when,what\nperson,site,collected_at,result\np1,North,2026-01-05T08:00,neg\n"));
        var reading = folder.Read(TestFolder.Screening(new ExportSettings { Columns = Columns(("person", "badge"), ("site", "where"), ("collected_at", "when"), ("result", "what")) }));
        TestFolder.Rows(reading).Should().Be(2);
    }

    [Fact]
    public void A_compressed_one_and_one_that_is_pseudonymized_are_read_too()
    {
        using var packed = new MemoryStream();
        using (var gzip = new GZipStream(packed, CompressionLevel.Fastest, leaveOpen: true)) gzip.Write(ParquetBytes.OfCsv(TestFolder.Headings + "p1,North,2026-01-05T08:00,neg\n"));
        using var folder = new TestFolder().With("screening.parquet.gz", packed.ToArray());
        TestFolder.Outcomes(folder.Read()).Should().Equal(1, 0, 0, 0);
    }

    private static ImmutableSortedDictionary<string, string> Columns(params (string Column, string Heading)[] mapped) =>
        mapped.ToImmutableSortedDictionary(one => one.Column, one => one.Heading, StringComparer.Ordinal);

    internal static byte[] Bytes(string file) => File.ReadAllBytes(Path.Combine(RepositoryRoot.Path, "tests", "ScreenStats.Records.Tests", "Formats", "Columnar", "Files", file));

    /// <summary>What a file is turned into.</summary>
    internal static string Text(byte[] parquet, Action? tick = null, TimeZoneInfo? zone = null)
    {
        using var folder = new PrivateFolder();
        string path;
        using (var to = folder.Create(out path))
        {
            new ParquetFile("screening.parquet", new HeadingSearch(ExportKind.Screening, new ExportSettings()), zone, new UnpackingRoom(1L << 30, () => null), tick ?? (() => { })).Convert(new MemoryStream(parquet), to);
        }

        return File.ReadAllText(path);
    }

    private sealed class Culture : IDisposable
    {
        private readonly System.Globalization.CultureInfo before = System.Globalization.CultureInfo.CurrentCulture;

        public Culture(string name) => System.Globalization.CultureInfo.CurrentCulture = new System.Globalization.CultureInfo(name);

        public void Dispose() => System.Globalization.CultureInfo.CurrentCulture = before;
    }
}
