using System.Runtime.InteropServices;
using ScreenStats.Counting.Diagnostics;
using ScreenStats.Records.Formats.Converting;
using ScreenStats.Records.PersonLog.Identifiers;
using ScreenStats.Records.PersonLog.Scanning;
using ScreenStats.Records.PersonLog.Spilling;
using ScreenStats.Records.Tests.Validation;

namespace ScreenStats.Records.Tests.PersonLog;

/// <summary>Temporary files of rows: private, bounded by the disk, and gone whatever happens.</summary>
[Collection(nameof(Alone))]
public sealed class SpillTests : IDisposable
{
    private const string Variable = "TMPDIR";

    // A folder of temporary files of its own: other processes use the machine's.
    private readonly string temporary = Directory.CreateTempSubdirectory("spill").FullName;
    private readonly string? usual = Environment.GetEnvironmentVariable(Variable);

    public SpillTests()
    {
        if (!OperatingSystem.IsWindows()) Environment.SetEnvironmentVariable(Variable, temporary);
    }

    public void Dispose()
    {
        if (!OperatingSystem.IsWindows()) Environment.SetEnvironmentVariable(Variable, usual);
        Directory.Delete(temporary, recursive: true);
    }

    private static readonly MemoryBudget Nothing = new(0, 0, 0, 1 << 20);

    [Fact]
    public void The_folder_is_private_its_files_have_no_names_and_it_goes_with_its_owner()
    {
        if (OperatingSystem.IsWindows()) return;
        var before = Folders();
        using (var folder = new SpillFolder())
        {
            var file = folder.Create();
            file.Append([1, 2, 3]);
            var made = Folders().Except(before).Should().ContainSingle().Subject;
            File.GetUnixFileMode(made).Should().Be(UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute);
            Directory.EnumerateFileSystemEntries(made).Select(Path.GetFileName).Should().Equal(PrivateFolder.Lock);
            var read = new byte[2];
            file.Read(read, 1);
            read.Should().Equal(2, 3);
            folder.Written.Should().Be(3);
        }

        Folders().Should().BeEquivalentTo(before);
    }

    [Fact]
    public void A_disk_that_takes_no_more_is_said_with_what_to_do()
    {
        if (!OperatingSystem.IsLinux()) return;
        using var folder = new SpillFolder(() => null, () => new FileStream("/dev/full", FileMode.Open, FileAccess.Write));
        var act = () => folder.Create().Append(new byte[1 << 20]);
        Said(act).Should().Be(
            $"Rows that do not fit into the memory that was stated go into temporary files, 0 GB so far, but the disk of {Path.GetTempPath()} is full, or cannot be written to. Make room there, name a folder with more room in TMPDIR, or state more memory.");
    }

    [Fact]
    public void A_disk_is_never_filled_to_its_end()
    {
        var left = UnpackingRoom.LeftFree + (64L << 20);
        using var folder = new SpillFolder(() => left);
        var file = folder.Create();
        var act = () =>
        {
            for (var piece = 0; piece < 1000; piece++)
            {
                file.Append(new byte[1 << 20]);
                left -= 1 << 20;
            }
        };
        Said(act).Should().Contain("would be left with less than 0.5 GB. Make room there");
        left.Should().BeGreaterThan(UnpackingRoom.LeftFree - (32 << 20));
    }

    [Fact]
    public void A_temporary_file_that_is_cut_off_is_said_too()
    {
        using var folder = new SpillFolder();
        var file = folder.Create();
        file.Append([1, 2, 3]);
        var act = () => file.Read(new byte[4], 0);
        Said(act).Should().Contain("cannot be read");
    }

    [Theory]
    [InlineData(1)]
    [InlineData(3)]
    public void A_reading_through_temporary_files_is_the_same_to_the_last_cell_and_leaves_nothing(int threads)
    {
        var before = Folders();
        using var folder = new TestFolder().With("screening.csv", "screen_id,person,site,collected_at,result,lot,kit\n" + string.Concat(Enumerable.Range(0, 30_000).Select(i =>
            $"{(i % 7 == 0 ? "" : $"s{i % 29_000}")},p{i * 7919 % 2111},North,2026-01-{1 + (i % 28):00}T{i % 24:00}:{i % 60:00},{(i % 97 == 0 ? "pos" : i % 89 == 0 ? "what" : "neg")},L{i % 3},k{i / 25}\n")))
            .With("confirmatory.csv", "person,collected_at,result\n" + string.Concat(Enumerable.Range(0, 600).Select(i => $"p{i},2026-01-{1 + (i % 28):00}T12:00,{(i % 2 == 0 ? "positive" : "negative")}\n")));
        var expected = folder.Read(options: new ReadOptions { Threads = 1 });

        var reading = folder.Read(options: new ReadOptions { Threads = threads, Budget = Nothing });

        Cells(reading).Should().Be(Cells(expected));
        reading.SetAside.Should().Equal(expected.SetAside);
        reading.Diagnostics.Select(one => one.ToString()).Should().Equal(expected.Diagnostics.Select(one => one.ToString()));
        Folders().Except(before).Should().BeEquivalentTo([folder.Path]);
    }

    [Fact]
    public void Stopping_leaves_nothing()
    {
        var before = Folders();
        using var folder = new TestFolder().With("screening.csv", TestFolder.Headings + string.Concat(Enumerable.Range(0, 60_000).Select(i => $"p{i},North,2026-01-05,neg\n")));
        using var stop = new CancellationTokenSource();
        var made = false;
        var progress = new Telling(() =>
        {
            made |= Folders().Except(before).Count() > 1;
            if (made) stop.Cancel();
        });
        var read = () => folder.Read(options: new ReadOptions { Threads = 1, Budget = Nothing, CancellationToken = stop.Token, Progress = progress });
        read.Should().Throw<OperationCanceledException>();
        made.Should().BeTrue("rows were in temporary files when it was stopped");
        Folders().Except(before).Should().BeEquivalentTo([folder.Path]);
    }

    [Fact]
    public void Memory_has_a_least()
    {
        var act = () => new ReadOptions { Memory = ReadOptions.LeastMemory - 1 };
        act.Should().Throw<ArgumentOutOfRangeException>().WithParameterName("Memory");
        new ReadOptions { Memory = ReadOptions.LeastMemory }.Budget.Should().Be(MemoryBudget.Of(ReadOptions.LeastMemory));
        new ReadOptions().Budget.Should().BeNull();
        MemoryBudget.Of(ReadOptions.LeastMemory).Log.Should().BeGreaterThan(4 << 20);
    }

    [Fact]
    public void Rows_of_identifiers_are_known_over_gaps_of_any_length_and_any_order_of_files()
    {
        uint[] rows = [5, 6, 8, 11, 12, 40, 41, 3, 4, 0, 4_000_000_000, 4_294_967_295];
        using var log = new ScreenIdLog();
        foreach (var row in rows) log.Add((ulong)row << 30, row);
        log.EndRun();
        var at = new ScreenIdRows(log.Runs);
        var found = new List<(ulong, uint)>();
        for (var slab = 0; slab < log.Slabs; slab++)
        {
            foreach (var print in log.Slab(slab))
            {
                var row = at.Next();
                if (print.Whole != 0) found.Add((print.Whole, row));
            }
        }

        found.Should().Equal(rows.Select(row => (Math.Max(((ulong)row << 30) >> 24, 1), row)));
        Marshal.SizeOf<ScreenIdLog.Print>().Should().Be(5);
        Marshal.SizeOf<LogEntry>().Should().Be(20);
    }

    private static string Said(Action act)
    {
        var found = act.Should().Throw<UnusableDataException>().Which.Diagnostics.Should().ContainSingle().Subject;
        found.Code.Should().Be(ReadingDiagnostics.NoRoomToSpill);
        return found.Message;
    }

    private static string Cells(ReadingResult reading) => System.Text.Json.JsonSerializer.Serialize(reading.Tally.Cells);

    private static List<string> Folders() => [.. Directory.EnumerateDirectories(Path.GetTempPath(), PrivateFolder.Prefix + "*")];

    private sealed class Telling(Action told) : IProgress<ReadProgress>
    {
        public void Report(ReadProgress value) => told();
    }
}
