using ScreenStats.Counting.Diagnostics;
using ScreenStats.Records.Formats.Converting;

namespace ScreenStats.Records.PersonLog.Spilling;

/// <summary>
/// Where rows go that do not fit into the memory that was stated: files in a folder that only this user can look into. A disk is never
/// filled to its end. The files have no names any more where the system can do without, so that a killed process leaves an empty folder.
/// </summary>
internal sealed class SpillFolder : IDisposable
{
    private const long Step = 16L << 20;
    private const double Gigabyte = 1L << 30;

    private readonly PrivateFolder folder = new();
    private readonly List<SpillFile> files = [];
    private readonly Lock gate = new();
    private readonly Func<long?> free;
    private readonly Func<FileStream>? create;
    private long taken;
    private long looked = -Step;

    /// <param name="free">Bytes that are free on the disk; null: it is asked.</param>
    /// <param name="create">Makes a file; null: in the private folder.</param>
    public SpillFolder(Func<long?>? free = null, Func<FileStream>? create = null)
    {
        this.free = free ?? (() => UnpackingRoom.FreeAt(folder.Path));
        this.create = create;
    }

    /// <summary>Bytes written into all files.</summary>
    public long Written => Interlocked.Read(ref taken);

    /// <summary>A new file. From any thread.</summary>
    public SpillFile Create()
    {
        lock (gate)
        {
            try
            {
                var file = new SpillFile(this, create?.Invoke() ?? Nameless());
                files.Add(file);
                return file;
            }
            catch (Exception exception) when (exception is IOException or UnauthorizedAccessException)
            {
                throw Fault("cannot be written to");
            }
        }
    }

    /// <summary>Takes room for bytes that are to be written.</summary>
    /// <exception cref="UnusableDataException">There is none.</exception>
    public void Take(long bytes)
    {
        lock (gate)
        {
            taken += bytes;
            if (taken - looked < Step) return;
            looked = taken;
            if (free() is { } left && left - bytes < UnpackingRoom.LeftFree)
            {
                throw Fault(FormattableString.Invariant($"would be left with less than {UnpackingRoom.LeftFree / Gigabyte:0.##} GB"));
            }
        }
    }

    public UnusableDataException Fault(string what) => new(new Diagnostic(ReadingDiagnostics.NoRoomToSpill, Severity.Error, "", null, "",
        FormattableString.Invariant($"Rows that do not fit into the memory that was stated go into temporary files, {taken / Gigabyte:0.##} GB so far, but the disk of {Path.GetTempPath()} {what}. ")
        + $"Make room there, name a folder with more room in {(OperatingSystem.IsWindows() ? "TMP" : "TMPDIR")}, or state more memory."));

    public void Dispose()
    {
        foreach (var file in files) file.Dispose();
        folder.Dispose();
    }

    private FileStream Nameless()
    {
        var stream = folder.Create(out var name);
        // Windows removes no file that is open.
        if (!OperatingSystem.IsWindows()) File.Delete(name);
        return stream;
    }
}
