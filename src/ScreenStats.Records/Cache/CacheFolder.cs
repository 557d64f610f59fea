using System.Globalization;
using ScreenStats.Records.Formats.Converting;

namespace ScreenStats.Records.Cache;

/// <summary>
/// The folder of a cache: only its owner can look into it, a file in it says whose it is, and nothing but entries is written there. It may
/// be deleted at any time, and several runs may use it at once: an entry is written under another name first and is never changed.
/// </summary>
internal sealed class CacheFolder
{
    /// <summary>The file that says what the folder is.</summary>
    public const string Marker = "screenstats-cache.txt";

    /// <summary>The file that says in which run each entry was used last.</summary>
    public const string Uses = "uses.txt";

    private const string PartStart = "screenstats-";
    private const string PartEnding = ".part";

    /// <summary>An entry goes that so many runs did not use.</summary>
    public const int KeptRuns = 10;

    private const string Says =
        """
        Cache of ScreenStats: what was read of exports, so that a daily run reads only what is new.
        It holds what the exports say of people under pseudonyms, and is as confidential as they are.
        It may be deleted at any time; the next run reads the exports again.

        """;

    private const UnixFileMode OwnerOnly = UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute;

    private readonly string path;
    private readonly Func<Stream, Stream> wrapped;

    private CacheFolder(string path, Func<Stream, Stream> wrapped)
    {
        this.path = path;
        this.wrapped = wrapped;
    }

    /// <summary>Opens the folder, or makes it.</summary>
    /// <param name="path">The folder.</param>
    /// <param name="wrapped">What stands between an entry and the disk.</param>
    /// <exception cref="CacheFolderException">It holds something else. Nothing was written.</exception>
    /// <exception cref="IOException">It cannot be made, or not be kept from others.</exception>
    /// <exception cref="UnauthorizedAccessException">As before.</exception>
    public static CacheFolder Open(string path, Func<Stream, Stream> wrapped)
    {
        if (File.Exists(path)) throw new CacheFolderException("The place of the cache is a file; name a folder.");
        var marker = System.IO.Path.Combine(path, Marker);
        // In this order: another run may make the folder at this moment.
        var filled = Directory.Exists(path) && Directory.EnumerateFileSystemEntries(path).Any(entry => !IsPart(System.IO.Path.GetFileName(entry)));
        var ours = File.Exists(marker);
        if (filled && !ours)
            throw new CacheFolderException("The folder of the cache holds other things; name an empty one, or one that does not exist yet.");
        if (OperatingSystem.IsWindows()) Directory.CreateDirectory(path);
        else
        {
            Directory.CreateDirectory(path, OwnerOnly);
            if ((File.GetUnixFileMode(path) & ~OwnerOnly) != 0) File.SetUnixFileMode(path, OwnerOnly);
        }

        var folder = new CacheFolder(path, wrapped);
        if (!ours) folder.Replace(Marker, Says);
        return folder;
    }

    /// <summary>Names of the entries.</summary>
    public IReadOnlyList<string> Entries() =>
        [.. Directory.EnumerateFiles(path, "*" + EntryName.Ending).Select(file => System.IO.Path.GetFileName(file)).Order(StringComparer.Ordinal)];

    public string PathOf(string name) => System.IO.Path.Combine(path, name);

    /// <summary>A name for what is to become an entry.</summary>
    public string NewPart() => PathOf(PartStart + System.IO.Path.GetRandomFileName() + PartEnding);

    /// <summary>Opens a new file that only the owner may read; it stays locked while it is written.</summary>
    public Stream Create(string part)
    {
        var options = new FileStreamOptions { Mode = FileMode.CreateNew, Access = FileAccess.Write, Share = FileShare.None, BufferSize = 1 << 16 };
        if (!OperatingSystem.IsWindows()) options.UnixCreateMode = UnixFileMode.UserRead | UnixFileMode.UserWrite;
        return wrapped(new FileStream(part, options));
    }

    /// <summary>Bytes that are free where the folder lies; null where nobody can tell.</summary>
    public long? Free() => UnpackingRoom.FreeAt(path);

    /// <summary>Makes a part an entry.</summary>
    public void Accept(string part, string name) => File.Move(part, PathOf(name), overwrite: true);

    /// <summary>Removes an entry that is of no use.</summary>
    public void Remove(string name) => TryDelete(PathOf(name));

    /// <summary>Notes which entries a run used, and removes those that were not used for long, or that another build made.</summary>
    public void EndRun(IReadOnlySet<string> used)
    {
        RemoveParts();
        var (run, known) = ReadUses();
        run++;
        var last = new SortedDictionary<string, long>(StringComparer.Ordinal);
        foreach (var name in Entries())
        {
            // What is not known may have come from another run at this moment.
            var at = used.Contains(name) ? run : known.GetValueOrDefault(name, run);
            if (name.StartsWith(EntryName.Start(Build.Id), StringComparison.Ordinal) && run - at < KeptRuns) last[name] = at;
            else Remove(name);
        }

        Replace(Uses, FormattableString.Invariant($"{run}\n") + string.Concat(last.Select(entry => FormattableString.Invariant($"{entry.Value} {entry.Key}\n"))));
    }

    private static bool IsPart(string name) => name.StartsWith(PartStart, StringComparison.Ordinal) && name.EndsWith(PartEnding, StringComparison.Ordinal);

    private (long Run, Dictionary<string, long> Last) ReadUses()
    {
        var last = new Dictionary<string, long>(StringComparer.Ordinal);
        var run = 0L;
        try
        {
            foreach (var line in File.ReadLines(PathOf(Uses)))
            {
                var space = line.IndexOf(' ', StringComparison.Ordinal);
                if (!long.TryParse(space < 0 ? line : line.AsSpan(0, space), NumberStyles.None, CultureInfo.InvariantCulture, out var at)) continue;
                if (space < 0) run = at;
                else if (at <= run) last[line[(space + 1)..]] = at;
            }
        }
        catch (IOException)
        {
            // The first run, or a folder that was deleted meanwhile.
        }

        return (run, last);
    }

    private void Replace(string name, string text)
    {
        var part = NewPart();
        try
        {
            using (var stream = Create(part))
            using (var writer = new StreamWriter(stream)) writer.Write(text);
            File.Move(part, PathOf(name), overwrite: true);
        }
        catch
        {
            TryDelete(part);
            throw;
        }
    }

    /// <summary>Removes what killed runs left half written: what nobody has locked, where files can be locked at all.</summary>
    private void RemoveParts()
    {
        foreach (var part in Directory.EnumerateFiles(path, PartStart + "*" + PartEnding))
        {
            try
            {
                using var held = Hold(part);
                if (held is null) continue;
                using (var again = Hold(part))
                {
                    if (again is not null) return;
                }

                if (!OperatingSystem.IsWindows()) File.Delete(part);
            }
            catch (Exception exception) when (exception is IOException or UnauthorizedAccessException)
            {
                continue;
            }

            if (OperatingSystem.IsWindows()) TryDelete(part);
        }
    }

    private static FileStream? Hold(string file)
    {
        try
        {
            return new FileStream(file, FileMode.Open, FileAccess.ReadWrite, FileShare.None);
        }
        catch (IOException)
        {
            return null;
        }
    }

    private static void TryDelete(string file)
    {
        try
        {
            File.Delete(file);
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException)
        {
            // Another run uses it, or has removed it.
        }
    }
}
