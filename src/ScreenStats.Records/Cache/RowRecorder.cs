using ScreenStats.Records.PersonLog;
using ScreenStats.Records.PersonLog.Rows;

namespace ScreenStats.Records.Cache;

/// <summary>
/// Writes the rows of a file into its entry as they go on to counting: what a row has of its own, in about 25 bytes. Of its meaning the eight
/// bits that the log keeps. One for each thread.
/// </summary>
/// <param name="sink">Counts them.</param>
/// <param name="entry">Takes them.</param>
/// <param name="part">Number of this part of the entry.</param>
/// <param name="first">The file's first record.</param>
internal sealed class RowRecorder(IRunSink sink, EntryWriter entry, int part, uint first) : IRunSink
{
    private const int RowsOfFrame = 1 << 16;

    private readonly PackedWriter frame = new(1 << 16);

    public RowKinds Kinds { get; } = new();

    public NameTable Kits { get; } = new();

    public NameTable Operators { get; } = new();

    public List<RowFrame> Frames { get; } = [];

    public void Take(ReadOnlySpan<RunRow> rows)
    {
        sink.Take(rows);
        for (; rows.Length > 0 && entry.Whole; rows = rows[Math.Min(rows.Length, RowsOfFrame)..]) Write(rows[..Math.Min(rows.Length, RowsOfFrame)]);
    }

    private void Write(ReadOnlySpan<RunRow> rows)
    {
        frame.Clear();
        var (record, seconds) = (0u, 0L);
        foreach (ref readonly var row in rows)
        {
            var at = row.Record - first;
            var next = at == record + 1;
            frame.Byte((byte)((next ? RowFrames.NextRecord : 0) | (row.MinutesToReading is null ? 0 : RowFrames.WithMinutes)));
            frame.Byte((byte)row.Meaning);
            if (!next) frame.Unsigned(at);
            record = at;
            frame.Count(Kinds.Number(row));
            var instant = row.Instant - RunCounter.EarliestInstant;
            frame.Signed(instant - seconds);
            seconds = instant;
            frame.Whole(row.Person);
            frame.Count(Kits.Number(row.Kit));
            frame.Count(Operators.Number(row.Operator));
            if (row.MinutesToReading is { } minutes) frame.Signed(minutes);
            if (row.HasScreenId) frame.Whole(row.ScreenId);
        }

        Frames.Add(new RowFrame(entry.Append(frame.Written), frame.Length, rows.Length, part));
    }
}
