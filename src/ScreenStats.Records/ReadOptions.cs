using ScreenStats.Counting.Programs;
using ScreenStats.Records.PersonLog.Spilling;

namespace ScreenStats.Records;

/// <summary>How a program is read. What is read does not depend on it.</summary>
public sealed record ReadOptions
{
    /// <summary>Number of threads; 0 (default): one for each processor.</summary>
    public int Threads { get; init; }

    /// <summary>Told from time to time how far reading is; null (default): nobody is told.</summary>
    public IProgress<ReadProgress>? Progress { get; init; }

    /// <summary>The moment up to which the data are complete, stated on the command line; goes before the program file's.</summary>
    /// <remarks>
    /// It decides which runs without a specimen are still pending, and what is in the future; no row is left out for it: later runs are counted and
    /// later reports settle runs. What was known on a day is another question: <see cref="Counting.Cubes.Tally.AsOf"/>, from a reading of
    /// everything, which does not depend on this moment.
    /// </remarks>
    public StatedMoment? AsOf { get; init; }

    /// <summary>Stops the reading; it is looked at every quarter of a megabyte and between the pieces of counting.</summary>
    public CancellationToken CancellationToken { get; init; }

    /// <summary>
    /// Bytes that files which are not plain text (gzip, workbooks, FHIR) may be turned into together, in temporary files; default 32 GiB.
    /// Whatever it says, 512 MiB stay free on the disk of temporary files, and no file may unpack to more than 200 times its length
    /// beyond 64 MiB. Plain text is read where it lies and needs no room.
    /// </summary>
    public long LargestUnpacked { get; init; } = DefaultLargestUnpacked;

    /// <summary>What <see cref="LargestUnpacked"/> is where nothing is said.</summary>
    public const long DefaultLargestUnpacked = 32L << 30;

    /// <summary>
    /// Bytes of memory that the whole process should aim at, at least <see cref="LeastMemory"/>; null (default): not bounded, which is
    /// faster where there is enough. Rows of the screening export, and days of kits, that do not fit go into temporary files that only this user can
    /// read, by a hash of the person, and are counted a part of the people at a time; the result is the same to the byte.
    /// </summary>
    /// <remarks>
    /// About 30 bytes for each screening row are written, and 512 MiB stay free on the disk of temporary files, which should not itself lie in
    /// memory. What is not bounded: a quarter of a byte for each row, 50 bytes for the name of each kit, 200 for each run that is not negative and specimen, 300 for each row that is set
    /// aside or a duplicate, and the evaluation.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">Less than the least.</exception>
    public long? Memory
    {
        get;
        init
        {
            if (value is { } bytes) ArgumentOutOfRangeException.ThrowIfLessThan(bytes, LeastMemory, nameof(Memory));
            field = value;
        }
    }

    /// <summary>The least <see cref="Memory"/>: 256 MiB.</summary>
    public const long LeastMemory = 256L << 20;

    /// <summary>What rows may take in memory: as <see cref="Memory"/> says, unless a test says otherwise.</summary>
    internal MemoryBudget? Budget
    {
        get => field ?? (Memory is { } bytes ? MemoryBudget.Of(bytes) : null);
        init;
    }

    /// <summary>Rows that an export may have: as many as have a number, unless a test says otherwise.</summary>
    internal uint MostRows { get; init; } = uint.MaxValue;

    /// <summary>
    /// A folder that keeps what was read of the screening and confirmatory exports, file by file, so that the next reading reads only files whose
    /// content is new; null (default): nothing is kept. It is made if it does not exist, for its owner alone, is as confidential as the exports, and
    /// may be deleted at any time. What is read and counted does not depend on it. Without use where the rows are in a database.
    /// </summary>
    public string? Cache { get; init; }

    /// <summary>What stands between the cache and the disk: for tests of disks that are full.</summary>
    internal Func<Stream, Stream> CacheStream { get; init; } = static stream => stream;

    /// <summary>True: set-aside rows keep their text, which may name people. Default false.</summary>
    public bool SetAsideText { get; init; }
}
