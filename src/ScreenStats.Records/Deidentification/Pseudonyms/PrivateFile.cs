using System.Buffers;

namespace ScreenStats.Records.Deidentification.Pseudonyms;

/// <summary>
/// A file that is there whole or not at all: written under a temporary name beside its place, readable by its owner only, and moved
/// when it is complete. Nothing is written over.
/// </summary>
internal sealed class PrivateFile : IDisposable
{
    private static readonly SearchValues<char> Hexadecimal = SearchValues.Create("0123456789abcdef");

    private readonly string path;
    private readonly string temporary;
    private readonly FileStream stream;
    private bool moved;

    public PrivateFile(string path)
    {
        this.path = path;
        RemoveLeft(path);
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

    /// <summary>
    /// Removes what runs for the same place have left that were killed before they could: only files that bear the name of such, are
    /// readable by their owner only and held by nobody. They may hold what names people in columns that were kept.
    /// </summary>
    private static void RemoveLeft(string path)
    {
        try
        {
            var options = new EnumerationOptions { AttributesToSkip = FileAttributes.ReparsePoint, MatchCasing = MatchCasing.CaseSensitive };
            foreach (var left in new DirectoryInfo(Path.GetDirectoryName(path)!).EnumerateFiles(".*.part", options))
            {
                if (IsOurs(left.Name, Path.GetFileName(path)) && Private(left)) RemoveUnheld(left.FullName);
            }
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException)
        {
            // What belongs to others, or is being removed by another run, is no reason not to write.
        }
    }

    private static bool IsOurs(string name, string target) =>
        name.Length == target.Length + 15 && name.AsSpan(1).StartsWith(target, StringComparison.Ordinal) && name[target.Length + 1] == '.'
        && !name.AsSpan(target.Length + 2, 8).ContainsAnyExcept(Hexadecimal);

    private static bool Private(FileInfo file) => OperatingSystem.IsWindows() || file.UnixFileMode == (UnixFileMode.UserRead | UnixFileMode.UserWrite);

    private static void RemoveUnheld(string file)
    {
        try
        {
            using var held = new FileStream(file, FileMode.Open, FileAccess.ReadWrite, FileShare.None);
            if (!OperatingSystem.IsWindows() && Held(file)) File.Delete(file);
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException)
        {
            return;
        }

        if (OperatingSystem.IsWindows()) File.Delete(file);
    }

    /// <summary>False where files cannot be locked, so that nothing tells a file in use from one that was left.</summary>
    private static bool Held(string file)
    {
        try
        {
            using var again = new FileStream(file, FileMode.Open, FileAccess.ReadWrite, FileShare.None);
            return false;
        }
        catch (IOException)
        {
            return true;
        }
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
