using System.Text;
using ScreenStats.Counting.Diagnostics;
using ScreenStats.Records.Cache;

namespace ScreenStats.Records.Tests.Cache;

/// <summary>Whatever happens to the folder of a cache, a reading gives what it gives without one, and nobody else's files are touched.</summary>
public class CacheSafetyTests
{
    private const string Damaged = "An entry of the cache was damaged; its file was read anew.";
    private const string NotWritten = "The folder of the cache cannot be written to, or its disk is full, so nothing more was kept in it; what was read and counted is the same.";

    [Fact]
    public void Folder_and_files_are_for_their_owner_alone_even_where_the_folder_was_there()
    {
        if (OperatingSystem.IsWindows()) return;
        using var program = Small();
        Directory.CreateDirectory(program.Place, (UnixFileMode)0b111_101_101);
        program.Same();
        File.GetUnixFileMode(program.Place).Should().Be(UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute);
        var files = Directory.GetFiles(program.Place);
        files.Select(file => Path.GetFileName(file)).Should().Contain([CacheFolder.Marker, CacheFolder.Uses]).And.HaveCount(4);
        foreach (var file in files) File.GetUnixFileMode(file).Should().Be(UnixFileMode.UserRead | UnixFileMode.UserWrite, file);
    }

    [Theory]
    [InlineData("letter.txt")]
    [InlineData("letter.part")]
    [InlineData("letter.entry")]
    public void A_folder_that_holds_other_things_is_refused_and_left_as_it_is(string name)
    {
        using var program = Small();
        Directory.CreateDirectory(program.Place);
        File.WriteAllText(Path.Combine(program.Place, name), "mine");
        var read = () => program.Cached(out _);
        read.Should().Throw<CacheFolderException>().WithMessage("*holds other things*").Which.Message.Should().NotContain(program.Place);
        Directory.GetFiles(program.Place).Should().Equal(Path.Combine(program.Place, name));
        File.ReadAllText(Path.Combine(program.Place, name)).Should().Be("mine");
        File.Delete(Path.Combine(program.Place, name));
        Directory.Delete(program.Place);
        File.WriteAllText(program.Place, "a file");
        read.Should().Throw<CacheFolderException>().WithMessage("*is a file*");
        File.ReadAllText(program.Place).Should().Be("a file");
    }

    [Fact]
    public void A_folder_that_cannot_be_made_is_said_once_and_the_exports_are_read()
    {
        using var program = Small();
        var file = Path.Combine(program.Folder.Path, "screening-1.csv");
        var result = program.Folder.Read(options: new ReadOptions { Cache = Path.Combine(file, "cache") });
        CachedProgram.Shown(result).Should().Be(program.Plain());
        result.Cache!.FromCache.Should().Be(0);
        result.Cache.Notes.Should().ContainSingle().Which.Should().StartWith("The folder of the cache cannot be made").And.NotContain(program.Folder.Path);
    }

    [Fact]
    public void An_entry_of_which_any_byte_was_changed_or_the_end_is_missing_is_not_opened()
    {
        using var program = Small();
        program.Same();
        foreach (var entry in program.Entries)
        {
            var whole = File.ReadAllBytes(entry);
            var footer = whole.AsSpan(whole.Length - EntryLayout.Footer);
            var understanding = footer.Slice(16, EntryLayout.Hash).ToArray();
            var content = Convert.ToHexStringLower(footer.Slice(16 + EntryLayout.Hash, EntryLayout.Hash));
            using (var opened = EntryFile.Open(entry, understanding, content, CancellationToken.None)) opened.TakeTail().Should().NotBeEmpty();
            var path = entry + ".changed";
            var open = () => EntryFile.Open(path, understanding, content, CancellationToken.None);
            File.WriteAllBytes(path, whole);
            using (var file = new FileStream(path, FileMode.Open, FileAccess.Write, FileShare.ReadWrite, bufferSize: 0))
            {
                for (var at = 0; at < whole.Length; at++)
                {
                    Put((byte)(whole[at] ^ (1 << (at % 8))));
                    var damaged = Record.Exception(() => { using var opened = open(); });
                    (damaged is DamagedEntryException).Should().BeTrue($"byte {at} was changed, and there was {damaged?.GetType().Name ?? "no word of it"}");
                    Put(whole[at]);

                    void Put(byte value)
                    {
                        file.Position = at;
                        file.WriteByte(value);
                    }
                }
            }

            using (open()) { }

            for (var length = 0; length < whole.Length; length += 1 + (length / 40))
            {
                File.WriteAllBytes(path, whole[..length]);
                open.Should().Throw<DamagedEntryException>($"only {length} bytes are left");
            }

            File.WriteAllBytes(path, [.. whole, 0]);
            open.Should().Throw<DamagedEntryException>("there is a byte too many");
            understanding[0] ^= 1;
            File.WriteAllBytes(path, whole);
            open.Should().Throw<DamagedEntryException>("it is of a file that was understood otherwise");
            File.Delete(path);
        }
    }

    [Fact]
    public void A_damaged_entry_is_read_anew_with_a_note_and_made_again()
    {
        using var program = Small();
        program.Same();
        var plain = program.Plain();
        var names = program.Entries;
        foreach (var entry in names)
        {
            var whole = File.ReadAllBytes(entry);
            foreach (var change in (Func<byte[], byte[]>[])[bytes => bytes[..(bytes.Length / 2)], _ => [], bytes => [.. bytes.Select((one, at) => at == bytes.Length / 3 ? (byte)(one ^ 4) : one)]])
            {
                File.WriteAllBytes(entry, change(whole));
                program.Cached(out var read).Should().Be(plain);
                read!.Cache!.FromCache.Should().Be(read.Cache.Files - 1);
                read.Cache.Notes.Should().Equal(Damaged);
                program.Cached(out read).Should().Be(plain);
                read!.Cache!.Notes.Should().BeEmpty();
                read.Cache.FromCache.Should().Be(read.Cache.Files);
                program.Entries.Should().Equal(names);
            }
        }
    }

    [Fact]
    public void A_disk_that_becomes_full_at_any_moment_leaves_no_half_entry_and_the_reading_goes_on()
    {
        using var program = Small();
        var plain = program.Plain();
        for (var room = 0; room < 4_000; room += 97)
        {
            // Of each file so many bytes are written at most.
            var options = new ReadOptions { CacheStream = stream => new FullDisk(stream, room) };
            program.Cached(out var read, options: options).Should().Be(plain, $"there is room for {room} bytes");
            read!.Cache!.FromCache.Should().Be(0);
            Directory.Exists(program.Place).Should().BeTrue();
            Directory.GetFiles(program.Place, "*.part").Should().BeEmpty();
            if (program.Entries.Length == 0) read.Cache.Notes.Should().ContainSingle().Which.Should().BeOneOf(NotWritten, "The folder of the cache cannot be made, read or kept from others, so the exports were read without it. Check its path and its rights, or name another.");
            foreach (var entry in program.Entries) File.Delete(entry);
        }

        program.Same("once there is room again");
    }

    [Fact]
    public void Several_runs_at_once_do_not_break_each_other()
    {
        using var program = Small();
        var plain = program.Plain();
        for (var round = 0; round < 5; round++)
        {
            var said = new string[6];
            Parallel.For(0, said.Length, run =>
            {
                if (run == 5 && Directory.Exists(program.Place))
                {
                    foreach (var entry in program.Entries) File.Delete(entry);
                }

                said[run] = program.Cached(out _);
            });
            said.Should().OnlyContain(one => one == plain);
            Directory.GetFiles(program.Place, "*.part").Should().BeEmpty();
        }

        program.Same();
    }

    [Fact]
    public void A_folder_that_is_deleted_between_runs_is_made_again()
    {
        using var program = Small();
        program.Same();
        Directory.Delete(program.Place, recursive: true);
        program.Same();
    }

    [Fact]
    public void What_a_killed_run_left_goes_and_what_another_build_made_too()
    {
        using var program = Small();
        program.Same();
        var left = Path.Combine(program.Place, "screenstats-abc.part");
        var held = Path.Combine(program.Place, "screenstats-held.part");
        var other = Path.Combine(program.Place, "0123456789abcdef-12-0123456789abcdef-00.entry");
        File.WriteAllText(left, "half an entry");
        File.WriteAllText(other, "another build's");
        using (new FileStream(held, FileMode.CreateNew, FileAccess.Write, FileShare.None))
        {
            program.Cached(out _).Should().Be(program.Plain());
            File.Exists(held).Should().BeTrue("a run that is not at its end writes it");
        }

        File.Exists(left).Should().BeFalse();
        File.Exists(other).Should().BeFalse();
        program.Cached(out _).Should().Be(program.Plain());
        File.Exists(held).Should().BeFalse();
    }

    [Fact]
    public void An_entry_goes_that_ten_runs_did_not_use_and_no_earlier()
    {
        using var program = Small();
        program.Same();
        var path = Path.Combine(program.Folder.Path, "screening-2.csv");
        var bytes = File.ReadAllBytes(path);
        File.Delete(path);
        for (var run = 1; run < CacheFolder.KeptRuns; run++) program.Cached(out _);
        File.WriteAllBytes(path, bytes);
        program.Same("after nine runs without it");
        File.Delete(path);
        var entries = program.Entries.Length;
        for (var run = 1; run <= CacheFolder.KeptRuns; run++) program.Cached(out _);
        program.Entries.Should().HaveCount(entries - 1);
        File.WriteAllBytes(path, bytes);
        program.Cached(out var read).Should().Be(program.Plain());
        read!.Cache!.FromCache.Should().Be(1);
    }

    [Fact]
    public void Nothing_is_kept_of_data_that_are_refused()
    {
        using var program = new CachedProgram();
        program.Folder.With("screening.csv", TestFolder.Headings + "Martin Hall,North,2026-01-05,neg\np2,North,2026-01-05,neg\n");
        program.Cached(out var read).Should().Be(program.Plain());
        read.Should().BeNull();
        Directory.GetFiles(program.Place).Should().Equal(Path.Combine(program.Place, CacheFolder.Marker));
    }

    [Fact]
    public void A_file_that_changes_while_it_is_read_is_refused_though_its_length_and_time_are_as_before()
    {
        using var program = new CachedProgram();
        program.Folder.With("screening.csv", CacheEqualityTests.Week(1, 12_000));
        var path = Path.Combine(program.Folder.Path, "screening.csv");
        var time = File.GetLastWriteTimeUtc(path);
        var once = false;
        var change = new Told(() =>
        {
            if (once) return;
            once = true;
            var bytes = Encoding.UTF8.GetBytes(File.ReadAllText(path).Replace(",neg,", ",pos,", StringComparison.Ordinal));
            using (var file = new FileStream(path, FileMode.Open, FileAccess.Write, FileShare.ReadWrite)) file.Write(bytes);
            File.SetLastWriteTimeUtc(path, time);
        });
        var read = () => program.Folder.Read(options: new ReadOptions { Threads = 1, Cache = program.Place, Progress = change });
        read.Should().Throw<UnusableDataException>().Which.Diagnostics.Should().ContainSingle().Which.Code.Should().Be(ReadingDiagnostics.ChangedWhileRead);
        once.Should().BeTrue();
        program.Entries.Should().BeEmpty();
        program.Same();
    }

    private static CachedProgram Small()
    {
        var program = new CachedProgram();
        program.Folder.With("screening-1.csv", CacheEqualityTests.Week(1, 40)).With("screening-2.csv", CacheEqualityTests.Week(2, 30));
        return program;
    }

    private sealed class Told(Action act) : IProgress<ReadProgress>
    {
        public void Report(ReadProgress value)
        {
            if (value.Bytes > 0) act();
        }
    }

    /// <summary>A file on a disk with room for so many bytes.</summary>
    private sealed class FullDisk(Stream inner, int room) : Stream
    {
        private int left = room;

        public override bool CanRead => false;

        public override bool CanSeek => false;

        public override bool CanWrite => true;

        public override long Length => inner.Length;

        public override long Position { get => inner.Position; set => throw new NotSupportedException(); }

        public override void Flush() => inner.Flush();

        public override int Read(byte[] buffer, int offset, int count) => throw new NotSupportedException();

        public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

        public override void SetLength(long value) => throw new NotSupportedException();

        public override void Write(byte[] buffer, int offset, int count)
        {
            inner.Write(buffer, offset, Math.Min(left, count));
            left -= Math.Min(left, count);
            if (left == 0) throw new IOException("There is not enough space on the disk.");
        }

        protected override void Dispose(bool disposing)
        {
            if (disposing) inner.Dispose();
            base.Dispose(disposing);
        }
    }
}
