using Parquet;
using ScreenStats.Counting.Diagnostics;
using ScreenStats.Records.Formats.Converting;

namespace ScreenStats.Records.Tests.Formats.Columnar;

public class HostileParquetTests
{
    private static readonly byte[] Good = ParquetBytes.OfCsv(TestFolder.Headings + "p1,North,2026-01-05T08:00,neg\n");

    [Fact]
    public void A_file_that_is_cut_off_anywhere_is_said_to_be()
    {
        for (var length = 1; length < Good.Length; length++)
        {
            var convert = () => ParquetFileTests.Text(Good[..length]);
            convert.Should().Throw<FileFault>().Which.Code.Should().Be(ReadingDiagnostics.UnreadableParquet);
        }
    }

    [Theory]
    [InlineData("plain.parquet")]
    [InlineData("dictionary-snappy.parquet")]
    [InlineData("second-pages-zstd.parquet")]
    [InlineData("delta.parquet")]
    public void A_byte_that_has_changed_gives_other_values_or_one_message_and_never_anything_else(string file)
    {
        var good = ParquetFileTests.Bytes(file);
        for (var at = 0; at < good.Length; at += 1 + (good.Length / 350))
        {
            foreach (var change in new byte[] { 0x01, 0xFF })
            {
                var bytes = good.ToArray();
                bytes[at] ^= change;
                try
                {
                    ParquetFileTests.Text(bytes).Should().NotBeEmpty();
                }
                catch (FileFault fault)
                {
                    fault.Message.Should().Contain("screening.parquet");
                }
            }
        }
    }

    [Fact]
    public void Text_that_is_called_Parquet_is_told()
    {
        using var folder = new TestFolder().With("screening.parquet", TestFolder.Headings + "p1,North,2026-01-05T08:00,neg\n");
        folder.Refused().Should().ContainSingle().Which.Message.Should().Be("screening.parquet is no Parquet file, as its name says. If it is text, name it .csv; else export it again.");
    }

    [Fact]
    public void Parquet_that_is_called_CSV_is_told()
    {
        using var folder = new TestFolder().With("screening.csv", Good);
        folder.Refused().Should().ContainSingle().Which.Message.Should().Contain("It looks like a Parquet file: if it is one, let its name end in .parquet.");
    }

    [Fact]
    public void One_without_rows_and_one_without_columns_are_told()
    {
        using var noRows = new TestFolder().With("screening.parquet", ParquetBytes.Of(("person", []), ("site", []), ("collected_at", []), ("result", [])));
        noRows.Refused().Should().ContainSingle().Which.Code.Should().Be(ReadingDiagnostics.NoRows);
        using var noColumns = new TestFolder().With("screening.parquet", ParquetBytes.WithFooter(0x15, 2, 0x19, 0x1C, 0x48, 1, (byte)'r', 0x15, 0, 0, 0x16, 0, 0x19, 0x0C, 0));
        noColumns.Refused().Should().ContainSingle().Which.Message.Should().Be("screening.parquet has no columns. Export it again, or export it as CSV.");
    }

    [Fact]
    public void Two_columns_of_one_name_are_refused()
    {
        var bytes = ParquetBytes.Replaced(ParquetBytes.OfCsv("person,persox,site,collected_at,result\np1,p2,North,2026-01-05T08:00,neg\n"), "persox"u8, "person"u8);
        using var folder = new TestFolder().With("screening.parquet", bytes);
        folder.Refused().Should().ContainSingle().Which.Message.Should().Contain("the same heading in columns 1 and 2");
    }

    [Fact]
    public void A_missing_column_is_told_as_for_CSV_and_without_a_line()
    {
        using var folder = new TestFolder().With("screening.parquet", ParquetBytes.OfCsv("person,site,collected_at\np1,North,2026-01-05T08:00\n"));
        var refused = folder.Refused().Should().ContainSingle().Which;
        (refused.Code, refused.Line).Should().Be((ReadingDiagnostics.MissingColumn, null));
    }

    [Fact]
    public void Text_that_is_not_UTF_8_is_refused_by_column_and_record()
    {
        var bytes = ParquetBytes.Replaced(ParquetBytes.OfCsv(TestFolder.Headings + "p1,North,2026-01-05T08:00,neg\np2,Zü,2026-01-05T08:00,neg\n"), "Zü"u8, [(byte)'Z', 0xFF, 0xFE]);
        using var folder = new TestFolder().With("screening.parquet", bytes);
        var refused = folder.Refused().Should().ContainSingle().Which;
        (refused.Code, refused.Line).Should().Be((ReadingDiagnostics.UnreadableParquet, 2));
        refused.Message.Should().StartWith("In screening.parquet the column \"site\" holds text in record 2 that is not UTF-8");
    }

    [Fact]
    public void A_record_longer_than_a_mebibyte_is_refused()
    {
        using var folder = new TestFolder().With("screening.parquet", ParquetBytes.Of(("person", ["p1", "p2"]), ("site", ["North", new string('x', 1 << 20)]), ("collected_at", ["2026-01-05", "2026-01-05"]), ("result", ["neg", "neg"])));
        var refused = folder.Refused().Should().ContainSingle().Which;
        (refused.Code, refused.Line).Should().Be((ReadingDiagnostics.RecordTooLong, 2));
    }

    [Fact]
    public void One_text_that_many_rows_refer_to_stops_before_the_disk_is_full()
    {
        var values = Enumerable.Repeat(new string('x', 10_000), 5_000).ToArray();
        var options = new ParquetOptions();
        foreach (var column in new[] { "person", "site", "collected_at", "result" }) options.ColumnEncodingHints[column] = EncodingHint.Dictionary;
        var bytes = ParquetBytes.Of(options, ("person", values), ("site", values), ("collected_at", values), ("result", values));
        bytes.Length.Should().BeLessThan(1 << 20);
        using var folder = new TestFolder().With("screening.parquet", bytes);
        folder.Refused().Should().ContainSingle().Which.Code.Should().Be(ReadingDiagnostics.SuspiciousArchive);
    }

    [Fact]
    public void Rows_that_are_only_claimed_take_no_memory()
    {
        // Two thousand million rows of one column of which no page is there.
        byte[] many = [0xFE, 0xFF, 0xFF, 0xFF, 0x0F];
        var bytes = ParquetBytes.WithFooter([0x15, 2, 0x19, 0x2C, 0x48, 1, (byte)'r', 0x15, 2, 0, 0x15, 2, 0x25, 0, 0x18, 1, (byte)'a', 0, 0x16, .. many, 0x19, 0x1C, 0x19, 0x0C, 0x16, 0, 0x16, .. many, 0, 0]);
        using var folder = new TestFolder().With("screening.parquet", bytes);
        var before = GC.GetTotalAllocatedBytes();
        folder.Refused().Should().ContainSingle().Which.Code.Should().Be(ReadingDiagnostics.SuspiciousArchive);
        (GC.GetTotalAllocatedBytes() - before).Should().BeLessThan(256 << 20);
    }

    [Fact]
    public void A_footer_of_structures_within_structures_does_not_bring_the_program_down()
    {
        using var folder = new TestFolder().With("screening.parquet", ParquetBytes.WithFooter([.. Enumerable.Repeat((byte)0x1C, 1 << 20)]));
        folder.Refused().Should().ContainSingle().Which.Code.Should().Be(ReadingDiagnostics.UnreadableParquet);
    }

    [Fact]
    public void A_list_that_claims_more_than_the_file_holds_is_refused()
    {
        using var folder = new TestFolder().With("screening.parquet", ParquetBytes.WithFooter(0x15, 2, 0x19, 0xFC, 0xFF, 0xFF, 0xFF, 0xFF, 0x07, 0));
        folder.Refused().Should().ContainSingle().Which.Code.Should().Be(ReadingDiagnostics.UnreadableParquet);
    }

    [Fact]
    public void A_wish_to_stop_is_heard_between_columns_and_rows()
    {
        var heard = 0;
        var convert = () => ParquetFileTests.Text(ParquetBytes.OfCsv(TestFolder.Headings + string.Concat(Enumerable.Repeat("p1,North,2026-01-05T08:00,neg\n", 5_000))), () =>
        {
            if (++heard == 7) throw new OperationCanceledException();
        });
        convert.Should().Throw<OperationCanceledException>();
    }
}
