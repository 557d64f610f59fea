using ScreenStats.Records.PersonLog;
using ScreenStats.Records.PersonLog.Rows;

namespace ScreenStats.Records.Cache;

/// <summary>The rows of an entry, to be counted again.</summary>
internal sealed class RowFrames
{
    public const int NextRecord = 1;
    public const int WithMinutes = 2;

    // No row is written in fewer bytes.
    private const int ShortestRow = 14;
    private const int RowsAtOnce = 1024;

    private readonly EntryFile entry;
    private readonly uint first;
    private readonly long records;
    private readonly RowFrame[] frames;
    private readonly RunRow[][] kinds;
    private readonly int[][] kits;
    private readonly int[][] operators;

    private RowFrames(EntryFile entry, uint first, long records, RowFrame[] frames, RunRow[][] kinds, int[][] kits, int[][] operators) =>
        (this.entry, this.first, this.records, this.frames, this.kinds, this.kits, this.operators) = (entry, first, records, frames, kinds, kits, operators);

    public int Count => frames.Length;

    /// <summary>Writes what tells the rows of the frames.</summary>
    public static void Write(PackedWriter to, IReadOnlyList<RowRecorder> parts, EntryNames names)
    {
        to.Count(parts.Count);
        foreach (var part in parts)
        {
            to.Count(part.Kinds.All.Count);
            foreach (var (shape, expiry) in part.Kinds.All)
            {
                to.Count(names.Sites.Number(shape.Site));
                to.Count(names.Lots.Number(shape.Lot));
                to.Unsigned(shape.Bits);
                to.Count(expiry is { } day ? day.DayNumber + 1 : 0);
            }

            to.Count(part.Kits.Codes.Count);
            foreach (var code in part.Kits.Codes) to.Count(names.Kits.Number(code));
            to.Count(part.Operators.Codes.Count);
            foreach (var code in part.Operators.Codes) to.Count(names.Operators.Number(code));
        }

        to.Count(parts.Sum(part => part.Frames.Count));
        foreach (var frame in parts.SelectMany(part => part.Frames))
        {
            to.Unsigned((ulong)frame.Offset);
            to.Count(frame.Length);
            to.Count(frame.Rows);
            to.Count(frame.Part);
        }
    }

    /// <summary>Reads what <see cref="Write"/> wrote.</summary>
    /// <param name="from">The tail of the entry.</param>
    /// <param name="entry">The entry.</param>
    /// <param name="codes">The names of the entry as codes of this run.</param>
    /// <param name="first">The file's first record in this run.</param>
    /// <param name="records">Records of the file.</param>
    public static RowFrames Read(ref PackedReader from, EntryFile entry, EntryCodes codes, uint first, long records)
    {
        var parts = from.Count();
        var (kinds, kits, operators) = (new RunRow[parts][], new int[parts][], new int[parts][]);
        for (var part = 0; part < parts; part++)
        {
            kinds[part] = new RunRow[from.Count()];
            foreach (ref var kind in kinds[part].AsSpan())
            {
                var (site, lot, bits) = (codes.Sites[from.Below(codes.Sites.Length)], codes.Lots[from.Below(codes.Lots.Length)], from.Unsigned());
                kind = new RowShape(site, lot, (uint)bits).Blank();
                var day = from.Below(DateOnly.MaxValue.DayNumber + 2);
                kind.LotExpiry = day == 0 ? null : DateOnly.FromDayNumber(day - 1);
            }

            kits[part] = Codes(ref from, codes.Kits);
            operators[part] = Codes(ref from, codes.Operators);
        }

        var frames = new RowFrame[from.Count()];
        foreach (ref var frame in frames.AsSpan())
        {
            frame = new RowFrame((long)from.Unsigned(), from.Below(int.MaxValue), from.Below(int.MaxValue), from.Below(parts));
            if ((long)frame.Rows * ShortestRow > frame.Length) throw new DamagedEntryException();
        }

        return new RowFrames(entry, first, records, frames, kinds, kits, operators);
    }

    /// <summary>Counts the rows of a frame.</summary>
    public void CountAgain(int number, IRunSink sink, ref byte[] buffer, RunRow[] rows)
    {
        var frame = frames[number];
        if (buffer.Length < frame.Length) buffer = new byte[frame.Length];
        entry.Read(buffer.AsSpan(0, frame.Length), frame.Offset);
        var from = new PackedReader(buffer.AsSpan(0, frame.Length));
        var (ownKinds, ownKits, ownOperators) = (kinds[frame.Part], kits[frame.Part], operators[frame.Part]);
        var (record, seconds) = (0u, 0L);
        for (var left = frame.Rows; left > 0;)
        {
            var count = Math.Min(left, RowsAtOnce);
            for (var i = 0; i < count; i++)
            {
                ref var row = ref rows[i];
                var flags = from.Byte();
                var meaning = from.Byte();
                record = (flags & NextRecord) != 0 ? record + 1 : (uint)from.Unsigned();
                if (record >= records) throw new DamagedEntryException();
                row = ownKinds[from.Below(ownKinds.Length)];
                row.Meaning = meaning;
                row.Record = first + record;
                seconds += from.Signed();
                if (seconds is < 0 or > uint.MaxValue) throw new DamagedEntryException();
                row.Instant = seconds + RunCounter.EarliestInstant;
                row.Person = from.Whole();
                row.Kit = ownKits[from.Below(ownKits.Length)];
                row.Operator = ownOperators[from.Below(ownOperators.Length)];
                if ((flags & WithMinutes) != 0) row.MinutesToReading = from.Small();
                if (row.HasScreenId) row.ScreenId = from.Whole();
            }

            sink.Take(rows.AsSpan(0, count));
            left -= count;
        }

        if (!from.AtEnd) throw new DamagedEntryException();
    }

    /// <summary>Room for the rows that are counted at once.</summary>
    public static RunRow[] Room() => new RunRow[RowsAtOnce];

    private static int[] Codes(ref PackedReader from, int[] all)
    {
        var codes = new int[from.Count()];
        for (var number = 0; number < codes.Length; number++) codes[number] = all[from.Below(all.Length)];
        return codes;
    }
}
