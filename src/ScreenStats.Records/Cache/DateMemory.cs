using ScreenStats.Counting.Ledger;
using ScreenStats.Records.Understanding;
using ScreenStats.Records.Validation;

namespace ScreenStats.Records.Cache;

/// <summary>What the dates of files that are known say about the order of day and month.</summary>
internal sealed class DateMemory(ReadingCache cache, ExportKind export, IReadOnlyList<FilePlan> plans, int threads) : FileMemory(cache, plans, threads, static _ => { })
{
    private readonly IReadOnlyList<DateEvidence> all = new DateEvidenceReader(export).Evidence;
    private IReadOnlyList<DateEvidenceReader> readers = [];

    /// <summary>What all files say, by column.</summary>
    public IReadOnlyList<DateEvidence> Evidence => all;

    protected override byte[] Key(FilePlan plan) => UnderstandingKey.OfDates(export, plan);

    protected override IReadOnlyList<RowReader> Readers(int file, EntryWriter? entry, uint firstRecord) =>
        readers = [.. Enumerable.Range(0, Threads).Select(_ => new DateEvidenceReader(export))];

    protected override void Learn(PackedWriter to, long firstRecord, RowsLearnt learnt)
    {
        var own = readers[0].Evidence;
        foreach (var other in readers.Skip(1))
        {
            for (var c = 0; c < own.Count; c++) own[c].Add(other.Evidence[c]);
        }

        for (var c = 0; c < own.Count; c++)
        {
            foreach (var dates in (long[])[own[c].Settled, own[c].DayFirst, own[c].MonthFirst, own[c].Either]) to.Signed(dates);
            foreach (var place in (long[])[own[c].FirstDayFirst, own[c].FirstMonthFirst, own[c].FirstEither.First, own[c].FirstEither.Second])
                to.Signed(place == long.MaxValue ? -1 : Place.In(0, place));
            all[c].Add(own[c]);
        }

        readers = [];
    }

    protected override void Recall(ref PackedReader from, int file, EntryFile entry, uint firstRecord, long records, RowsLearnt learnt)
    {
        foreach (var column in all)
        {
            var dates = (from.Signed(), from.Signed(), from.Signed(), from.Signed());
            column.Add(dates, (At(from.Signed()), At(from.Signed()), At(from.Signed()), At(from.Signed())));
        }

        long At(long place) => place < 0 ? long.MaxValue : Place.In(file, place);
    }
}
