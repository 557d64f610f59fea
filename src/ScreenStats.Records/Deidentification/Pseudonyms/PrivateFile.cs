namespace ScreenStats.Records.Deidentification.Pseudonyms;

/// <summary>
/// A file that is there whole or not at all: written under a temporary name beside its place, readable by its owner only, and moved
/// when it is complete. Nothing is written over.
/// </summary>
internal sealed class PrivateFile : IDisposable
{
    private readonly string path;
    private readonly string temporary;
    private readonly FileStream stream;
    private bool moved;

    public PrivateFile(string path)
    {
        this.path = path;
        temporary = Path.Combine(Path.GetDirectoryName(path)!, $".{Path.GetFileName(path)}.{Guid.NewGuid().ToString("N")[..8]}.part");
        var options = new FileStreamOptions { Mode = FileMode.CreateNew, Access = FileAccess.Write, Share = FileShare.None, BufferSize = 1 << 17 };
        if (!OperatingSystem.IsWindows()) options.UnixCreateMode = UnixFileMode.UserRead | UnixFileMode.UserWrite;
        stream = new FileStream(temporary, options);
    }

    public Stream Stream => stream;

    /// <summary>True where something stands in the place, even a link that leads nowhere.</summary>
    public static bool Taken(string path) => Path.Exists(path) || new FileInfo(path).LinkTarget is not null;

    /// <summary>Puts the complete file in its place.</summary>
    public void Keep()
    {
        stream.Flush(flushToDisk: true);
        stream.Dispose();
        File.Move(temporary, path, overwrite: false);
        moved = true;
    }

    public void Dispose()
    {
        if (moved) return;
        try
        {
            stream.Dispose();
        }
        catch (Exception failure) when (failure is IOException or ArgumentOutOfRangeException)
        {
            // What could not be written any more, on a full disk or beyond the longest file, is not wanted any more.
        }

        File.Delete(temporary);
    }
}
