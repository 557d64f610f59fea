using System.Collections.Concurrent;
using ScreenStats.Records.Formats;
using ScreenStats.Records.Understanding;

namespace ScreenStats.Records.Cache;

/// <summary>
/// The cache of one reading, over all its attempts: which entries there are, which were used, and which are to be kept once the reading has
/// come to its end. Whatever is wrong with the folder is noted, and the reading goes on without it.
/// </summary>
internal sealed class ReadingCache : IDisposable
{
    /// <summary>Bytes that stay free on the disk.</summary>
    public const long LeftFree = 512L << 20;

    private const string NotWritten = "The folder of the cache cannot be written to, or its disk is full, so nothing more was kept in it; what was read and counted is the same.";

    private readonly CacheFolder? folder;
    private readonly List<string> entries = [];
    private readonly HashSet<string> used = new(StringComparer.Ordinal);
    private readonly Dictionary<string, KeptFile> kept = new(StringComparer.Ordinal);
    private readonly ConcurrentDictionary<string, Lazy<Task<ContentHash>>> hashes = new(StringComparer.Ordinal);
    private readonly List<string> notes = [];
    private readonly Lock gate = new();
    private readonly CancellationToken cancelled;
    private bool writes;
    private bool reads;

    /// <param name="path">The folder.</param>
    /// <param name="wrapped">What stands between an entry and the disk.</param>
    /// <param name="cancelled">Stops the work.</param>
    /// <exception cref="CacheFolderException">The folder holds something else.</exception>
    public ReadingCache(string path, Func<Stream, Stream> wrapped, CancellationToken cancelled)
    {
        this.cancelled = cancelled;
        try
        {
            folder = CacheFolder.Open(path, wrapped);
            entries.AddRange(folder.Entries());
            reads = writes = true;
            if (folder.Free() < LeftFree) NoMoreWrites();
        }
        catch (Exception exception) when (exception is IOException and not CacheFolderException or UnauthorizedAccessException)
        {
            Note("The folder of the cache cannot be made, read or kept from others, so the exports were read without it. Check its path and its rights, or name another.");
        }
    }

    /// <summary>What was done, once the reading has come to its end.</summary>
    public CacheUse Use(int files, int known) => new(files, known, [.. notes]);

    /// <summary>The hash of a file that is read, worked out once.</summary>
    public Task<ContentHash> Hash(FilePlan plan) => Hash(plan, background: true).Value;

    /// <summary>The hash of a file, worked out here and now if nobody has begun.</summary>
    public ContentHash HashNow(FilePlan plan) => Hash(plan, background: false).Value.WaitAsync(cancelled).GetAwaiter().GetResult();

    /// <summary>True where an entry may be of this file: of another, only the names were looked at.</summary>
    public bool MayKnow(FilePlan plan, byte[] understanding)
    {
        if (!reads) return false;
        var start = EntryName.Start(Build.Id, plan.Length, understanding);
        return entries.Exists(name => name.StartsWith(start, StringComparison.Ordinal));
    }

    /// <summary>The entry of a file; null where there is none that is whole.</summary>
    public EntryFile? Find(FilePlan plan, byte[] understanding)
    {
        if (!MayKnow(plan, understanding)) return null;
        var hash = HashNow(plan);
        var name = EntryName.Of(Build.Id, plan.Length, understanding, hash.Sha256);
        if (!entries.Contains(name, StringComparer.Ordinal)) return null;
        try
        {
            var found = EntryFile.Open(folder!.PathOf(name), understanding, hash.Sha256, cancelled);
            lock (gate) used.Add(name);
            return found;
        }
        catch (DamagedEntryException)
        {
            Damaged(name);
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException)
        {
            // Another run has removed it, or it cannot be read: the file is.
        }

        return null;
    }

    /// <summary>Something to write an entry into; null where nothing can be kept.</summary>
    public EntryWriter? NewEntry()
    {
        if (!writes || folder!.Free() < LeftFree)
        {
            if (writes) NoMoreWrites();
            return null;
        }

        var writer = new EntryWriter(folder.NewPart(), folder.Create, _ => NoMoreWrites());
        return writer.Whole ? writer : null;
    }

    /// <summary>Keeps what was read of a file until the reading has come to its end.</summary>
    /// <param name="plan">The file.</param>
    /// <param name="understanding">How it was understood.</param>
    /// <param name="entry">All of it but its end; null where it cannot be written.</param>
    /// <param name="seen">Checksum of the bytes that were read.</param>
    public void Keep(FilePlan plan, byte[] understanding, EntryWriter? entry, UInt128 seen)
    {
        var key = plan.Path + "\n" + Convert.ToHexStringLower(understanding);
        if (kept.Remove(key, out var before)) before.Entry?.Dispose();
        kept[key] = new KeptFile(plan, understanding, entry, seen);
        _ = Hash(plan);
    }

    /// <summary>The files that changed while they were read, though length and time are as before: what was read is held against what was hashed.</summary>
    public IEnumerable<string> Changed() => kept.Values.Where(file => HashNow(file.Plan).Checksum != file.Seen).Select(file => Path.GetFileName(file.Plan.SourcePath)).Distinct(StringComparer.Ordinal);

    /// <summary>The reading has come to its end, and no file has changed: what was kept becomes entries, and those of no use any more go.</summary>
    public void Complete()
    {
        foreach (var file in kept.Values)
        {
            var hash = HashNow(file.Plan);
            if (file.Entry is null || !file.Entry.Complete(file.Understanding, hash.Sha256)) continue;
            var name = EntryName.Of(Build.Id, file.Plan.Length, file.Understanding, hash.Sha256);
            if (Written(() => folder!.Accept(file.Entry.Path, name))) used.Add(name);
        }

        if (folder is not null && (reads || writes)) Written(() => folder.EndRun(used));
    }

    /// <summary>Entries are not to be read: one of them holds what cannot be. Files are read instead.</summary>
    public void Distrust()
    {
        reads = false;
        used.Clear();
        Note("An entry of the cache was damaged, so the exports were read anew.");
    }

    public void Dispose()
    {
        foreach (var file in kept.Values) file.Entry?.Dispose();
        kept.Clear();
    }

    private Lazy<Task<ContentHash>> Hash(FilePlan plan, bool background) => hashes.GetOrAdd(plan.Path, _ => new Lazy<Task<ContentHash>>(() =>
    {
        var skipped = plan.Encoding.MarkLength();
        return background
            ? Task.Factory.StartNew(() => FileHash.WithChecksum(plan.Path, skipped, cancelled), CancellationToken.None, TaskCreationOptions.LongRunning, TaskScheduler.Default)
            : Task.FromResult(FileHash.WithChecksum(plan.Path, skipped, cancelled));
    }));

    private void Damaged(string name)
    {
        Note("An entry of the cache was damaged; its file was read anew.");
        folder!.Remove(name);
    }

    private bool Written(Action write)
    {
        try
        {
            write();
            return true;
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException)
        {
            NoMoreWrites();
            return false;
        }
    }

    private void NoMoreWrites()
    {
        writes = false;
        Note(NotWritten);
    }

    private void Note(string text)
    {
        lock (gate)
        {
            if (!notes.Contains(text)) notes.Add(text);
        }
    }

    private sealed record KeptFile(FilePlan Plan, byte[] Understanding, EntryWriter? Entry, UInt128 Seen);
}
