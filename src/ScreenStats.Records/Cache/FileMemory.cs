using ScreenStats.Records.Formats;
using ScreenStats.Records.Understanding;

namespace ScreenStats.Records.Cache;

/// <summary>What a cache knows of the files of one export: files that it knows are not read.</summary>
internal abstract class FileMemory(ReadingCache cache, IReadOnlyList<FilePlan> plans, int threads, Action<long> told) : IDisposable
{
    private readonly EntryFile?[] known = new EntryFile?[plans.Count];
    private readonly byte[][] keys = new byte[plans.Count][];
    private EntryWriter? entry;
    private SeenBytes? seen;

    /// <summary>Files of the export.</summary>
    public int Files => Plans.Count;

    /// <summary>Files that were not read.</summary>
    public int Known { get; private set; }

    /// <summary>What notes the bytes of the file that is being read.</summary>
    public SeenBytes? Seen => seen;

    protected ReadingCache Cache { get; } = cache;

    protected IReadOnlyList<FilePlan> Plans { get; } = plans;

    protected int Threads { get; } = threads;

    /// <summary>Looks which files are known: those that may be are hashed, several at once.</summary>
    public void Look()
    {
        for (var f = 0; f < Plans.Count; f++) keys[f] = Key(Plans[f]);
        // The hash of a file that is surely not known goes beside its reading.
        for (var f = 0; f < Plans.Count; f++)
        {
            if (!Cache.MayKnow(Plans[f], keys[f])) _ = Cache.Hash(Plans[f]);
        }

        PersonLog.Workers.Run(Threads, Plans.Count, static () => 0, (_, f) => known[f] = Cache.Find(Plans[f], keys[f]), static _ => { });
    }

    /// <summary>What is known of a file: its number of records; null where it must be read.</summary>
    public long? Recall(int file, RecordIndex index, long firstRecord, RowsLearnt learnt)
    {
        if (known[file] is not { } found) return null;
        var from = new PackedReader(found.TakeTail());
        var records = from.Signed();
        if (records < 0 || firstRecord + records > uint.MaxValue) throw new DamagedEntryException();
        Recall(ref from, file, found, (uint)firstRecord, records, learnt);
        IndexForm.Read(ref from, index);
        if (!from.AtEnd) throw new DamagedEntryException();
        Known++;
        return records;
    }

    /// <summary>Begins a file that must be read.</summary>
    /// <returns>Readers of its own, one for each thread.</returns>
    public IReadOnlyList<RowReader> Begin(int file, long firstRecord)
    {
        entry?.Dispose();
        entry = Cache.NewEntry();
        seen = new SeenBytes();
        return Readers(file, entry, (uint)firstRecord);
    }

    /// <summary>The file was read to its end.</summary>
    public void Keep(int file, RecordIndex index, long firstRecord, long records, bool broken, RowsLearnt learnt)
    {
        var tail = new PackedWriter(1 << 16);
        tail.Signed(records);
        Learn(tail, firstRecord, learnt);
        IndexForm.Write(tail, index);
        if (broken || entry is null || !entry.Whole)
        {
            entry?.Dispose();
            entry = null;
        }
        else entry.AppendTail(tail.Written);

        if (!broken) Cache.Keep(Plans[file], keys[file], entry, seen!.Value);
        entry = null;
    }

    /// <summary>All files were read or recalled.</summary>
    public virtual void Complete()
    {
        for (var f = 0; f < Plans.Count; f++)
        {
            if (known[f] is not null) told(Plans[f].Length);
        }
    }

    public void Dispose()
    {
        entry?.Dispose();
        foreach (var file in known) file?.Dispose();
    }

    protected abstract byte[] Key(FilePlan plan);

    /// <summary>Readers for a file.</summary>
    protected abstract IReadOnlyList<RowReader> Readers(int file, EntryWriter? entry, uint firstRecord);

    /// <summary>Takes what the readers of a file learnt, and writes it.</summary>
    protected abstract void Learn(PackedWriter to, long firstRecord, RowsLearnt learnt);

    /// <summary>Takes what was learnt of a file that is known.</summary>
    protected abstract void Recall(ref PackedReader from, int file, EntryFile entry, uint firstRecord, long records, RowsLearnt learnt);
}
