using ScreenStats.Records.Formats;

namespace ScreenStats.Records.Cache;

/// <summary>Where the records of a file are, in an entry.</summary>
internal static class IndexForm
{
    public static void Write(PackedWriter to, RecordIndex index)
    {
        var entries = index.Entries;
        to.Count(entries.Length);
        var (record, line, offset) = (0L, 0L, 0L);
        foreach (var entry in entries)
        {
            to.Signed(entry.FirstRecord - record);
            to.Signed(entry.FirstLine - line);
            to.Signed(entry.SourceOffset - offset);
            (record, line, offset) = (entry.FirstRecord, entry.FirstLine, entry.SourceOffset);
            to.Count(entry.SourceLength);
            to.Count(entry.Length);
            Write(to, entry.Offsets);
            Write(to, entry.Lines);
        }
    }

    public static void Read(ref PackedReader from, RecordIndex index)
    {
        var (record, line, offset) = (0L, 0L, 0L);
        for (var left = from.Count(); left > 0; left--)
        {
            record += from.Signed();
            line += from.Signed();
            offset += from.Signed();
            var (sourceLength, length) = (from.Below(int.MaxValue), from.Below(int.MaxValue));
            var offsets = Numbers(ref from);
            index.Add(new RecordIndex.Entry(record, line, offset, sourceLength, length, offsets, Numbers(ref from)));
        }
    }

    private static void Write(PackedWriter to, int[] numbers)
    {
        to.Count(numbers.Length);
        var last = 0;
        foreach (var number in numbers)
        {
            to.Signed(number - last);
            last = number;
        }
    }

    private static int[] Numbers(ref PackedReader from)
    {
        var numbers = new int[from.Count()];
        var last = 0L;
        for (var i = 0; i < numbers.Length; i++)
        {
            last += from.Signed();
            numbers[i] = (int)last;
        }

        return numbers;
    }
}
