using ScreenStats.Counting.Ledger;
using ScreenStats.Counting.Programs;
using ScreenStats.Records.PersonLog;
using ScreenStats.Records.PersonLog.Codes;
using ScreenStats.Records.PersonLog.Rows;
using ScreenStats.Records.Understanding;

namespace ScreenStats.Records.Cache;

/// <summary>Rows that are known: they go on to counting as if they had been read.</summary>
internal sealed class RowMemory(
    ReadingCache cache, ExportKind export, ExportSettings settings, TimeZoneInfo? zone, Vocabularies vocabularies, IReadOnlyList<FilePlan> plans,
    IReadOnlyList<IRunSink?> sinks, Func<IRunSink?, RowReader> create, Action<long> told) : FileMemory(cache, plans, sinks.Count, told)
{
    private readonly List<RowFrames> frames = [];
    private readonly List<RowRecorder> recorders = [];
    private IReadOnlyList<RowReader> readers = [];

    public override void Complete()
    {
        var pieces = frames.SelectMany(file => Enumerable.Range(0, file.Count).Select(number => (File: file, Number: number))).ToList();
        var next = 0;
        if (pieces.Count > 0)
        {
            Workers.Run(sinks.Count, pieces.Count, () => new Counting(sinks[next++]!), (worker, piece) => worker.Count(pieces[piece].File, pieces[piece].Number), static _ => { });
        }

        base.Complete();
    }

    protected override byte[] Key(FilePlan plan) => UnderstandingKey.OfRows(export, plan, settings, zone);

    protected override IReadOnlyList<RowReader> Readers(int file, EntryWriter? entry, uint firstRecord)
    {
        recorders.Clear();
        return readers = [.. sinks.Select(sink => create(sink is null || entry is null ? sink : Recorder(sink, entry, firstRecord)))];
    }

    protected override void Learn(PackedWriter to, long firstRecord, RowsLearnt learnt)
    {
        var own = new RowsLearnt(export);
        foreach (var reader in readers) own.Add(reader);
        var names = new EntryNames();
        var (rows, rest) = (new PackedWriter(), new PackedWriter());
        RowFrames.Write(rows, recorders, names);
        LearntForm.Write(rest, export, own, names, vocabularies, firstRecord);
        names.Write(to, vocabularies);
        to.Bytes(rows.Written);
        to.Bytes(rest.Written);
        learnt.Add(own);
        readers = [];
        recorders.Clear();
    }

    protected override void Recall(ref PackedReader from, int file, EntryFile entry, uint firstRecord, long records, RowsLearnt learnt)
    {
        var codes = EntryCodes.Read(ref from, vocabularies);
        frames.Add(RowFrames.Read(ref from, entry, codes, firstRecord, records));
        learnt.Add(LearntForm.Read(ref from, export, codes, file, firstRecord));
    }

    private RowRecorder Recorder(IRunSink sink, EntryWriter entry, uint firstRecord)
    {
        var recorder = new RowRecorder(sink, entry, recorders.Count, firstRecord);
        recorders.Add(recorder);
        return recorder;
    }

    /// <summary>One thread's counting of known rows.</summary>
    private sealed class Counting(IRunSink sink)
    {
        private readonly RunRow[] rows = RowFrames.Room();
        private byte[] buffer = [];

        public void Count(RowFrames file, int number) => file.CountAgain(number, sink, ref buffer, rows);
    }
}
