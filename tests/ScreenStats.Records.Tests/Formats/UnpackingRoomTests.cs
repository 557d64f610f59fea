using System.IO.Compression;
using System.Text;
using ScreenStats.Counting.Diagnostics;
using ScreenStats.Records.Formats.Converting;

namespace ScreenStats.Records.Tests.Formats;

public class UnpackingRoomTests
{
    [Fact]
    public void What_is_stated_is_the_most_of_all_files_together()
    {
        var room = new UnpackingRoom(100, () => null);
        room.Take(60, "a.gz");
        room.Take(40, "b.gz");
        var act = () => room.Take(1, "c.gz");
        act.Should().Throw<FileFault>().Where(fault => fault.Code == ReadingDiagnostics.NoRoomToUnpack && fault.Message.StartsWith("c.gz ") && fault.Message.Contains("gunzip"));
    }

    [Fact]
    public void The_disk_is_never_filled_and_is_asked_now_and_then_only()
    {
        var asked = 0;
        var left = 3L << 30;
        var room = new UnpackingRoom(long.MaxValue, () =>
        {
            asked++;
            return left;
        });
        var act = () =>
        {
            for (var piece = 0; piece < 100_000; piece++)
            {
                room.Take(1 << 16, "a.gz");
                left -= 1 << 16;
            }
        };
        act.Should().Throw<FileFault>().WithMessage("a.gz cannot be unpacked: the disk*less than 0.5 GB*");
        left.Should().BeInRange(UnpackingRoom.LeftFree - (32 << 20), UnpackingRoom.LeftFree);
        asked.Should().BeLessThan(200);
    }

    [Fact]
    public void The_room_where_temporary_files_lie_can_be_told() => UnpackingRoom.FreeAt(Path.GetTempPath()).Should().BePositive();

    [Fact]
    public void A_bomb_of_any_length_stops_after_the_same_few_bytes()
    {
        var written = new[] { 200, 800 }.Select(megabytes => Unpacked(Bomb(megabytes))).ToArray();
        written.Should().AllSatisfy(bytes => bytes.Should().BeLessThan(100L << 20));
        (written[1] - written[0]).Should().BeLessThan(1 << 20);
    }

    [Theory]
    [InlineData("screening.csv.gz")]
    [InlineData("screening.xlsx")]
    [InlineData("confirmatory.ndjson")]
    public void A_reading_with_less_room_than_a_file_needs_says_what_to_do(string name)
    {
        var line = "{\"resourceType\":\"Observation\",\"status\":\"final\",\"subject\":{\"reference\":\"Patient/p1\"},\"effectiveDateTime\":\"2026-01-05\",\"valueString\":\"positive\"}\n";
        var rows = string.Concat(Enumerable.Range(0, 20_000).Select(i => $"p{i},North,2026-01-05,neg\n"));
        using var folder = new TestFolder().With(name, name[^1] switch
        {
            'z' => Gzip(Encoding.UTF8.GetBytes(TestFolder.Headings + rows)),
            'x' => WorkbookParts.Of(WorkbookParts.Row(1, "person", "site", "collected_at", "result") + string.Concat(Enumerable.Range(2, 5_000).Select(row => WorkbookParts.Row(row, $"p{row}", "North", "2026-01-05", "neg")))),
            _ => Encoding.UTF8.GetBytes(string.Concat(Enumerable.Repeat(line, 20_000))),
        });
        if (name[0] == 'c') folder.With("screening.csv", TestFolder.Headings + "p1,North,2026-01-05,neg\n");
        var read = () => folder.Read(options: new ReadOptions { Threads = 1, LargestUnpacked = 60_000 });
        var found = read.Should().Throw<UnusableDataException>().Which.Diagnostics.Should().ContainSingle().Subject;
        (found.Code, found.File).Should().Be((ReadingDiagnostics.NoRoomToUnpack, name));
        found.Message.Should().Contain("Unpack it yourself");
        folder.Read().Should().NotBeNull("there is room enough by default");
    }

    private static long Unpacked(byte[] packed)
    {
        using var folder = new TestFolder().With("a.gz", packed);
        using var to = new FileStream(Path.Combine(folder.Path, "out"), FileMode.CreateNew, FileAccess.ReadWrite);
        var act = () => GzipFile.Unpack(Path.Combine(folder.Path, "a.gz"), "a.gz", to, new UnpackingRoom(long.MaxValue, () => null), () => { });
        act.Should().Throw<FileFault>().Which.Code.Should().Be(ReadingDiagnostics.SuspiciousArchive);
        return to.Length;
    }

    private static byte[] Bomb(int megabytes)
    {
        using var packed = new MemoryStream();
        using (var gzip = new GZipStream(packed, CompressionLevel.Optimal))
        {
            var blank = new byte[1 << 20];
            for (var i = 0; i < megabytes; i++) gzip.Write(blank);
        }

        return packed.ToArray();
    }

    private static byte[] Gzip(byte[] bytes)
    {
        using var packed = new MemoryStream();
        using (var gzip = new GZipStream(packed, CompressionLevel.Fastest)) gzip.Write(bytes);
        return packed.ToArray();
    }
}
