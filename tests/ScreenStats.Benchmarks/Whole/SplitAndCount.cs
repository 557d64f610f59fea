using System.Runtime.InteropServices;

namespace ScreenStats.Benchmarks.Whole;

/// <summary>
/// The floor that reading is measured against: the bytes of a file split at commas and line breaks on two threads and
/// counted by one column, quotes ignored, nothing understood and nothing checked.
/// </summary>
internal static class SplitAndCount
{
    private const int BlockSize = 1 << 22;

    public static (long Rows, long Fields, int Levels) Run(string file, int countedColumn, int threads)
    {
        var length = new FileInfo(file).Length;
        var results = new (long Rows, long Fields, Dictionary<ulong, long> Counts)[threads];
        Parallel.For(0, threads, new ParallelOptions { MaxDegreeOfParallelism = threads }, thread =>
        {
            var from = Align(file, length * thread / threads);
            var to = Align(file, length * (thread + 1) / threads);
            results[thread] = Part(file, from, to, countedColumn);
        });

        var levels = new Dictionary<ulong, long>();
        foreach (var (_, _, counts) in results)
        {
            foreach (var (level, count) in counts) CollectionsMarshal.GetValueRefOrAddDefault(levels, level, out _) += count;
        }

        return (results.Sum(result => result.Rows), results.Sum(result => result.Fields), levels.Count);
    }

    private static long Align(string file, long position)
    {
        if (position == 0) return 0;
        using var stream = new FileStream(file, FileMode.Open, FileAccess.Read, FileShare.Read, 1 << 16);
        stream.Position = position - 1;
        int value;
        while ((value = stream.ReadByte()) >= 0 && value != '\n')
        {
        }

        return stream.Position;
    }

    private static (long Rows, long Fields, Dictionary<ulong, long> Counts) Part(string file, long from, long to, int countedColumn)
    {
        using var handle = File.OpenHandle(file);
        var counts = new Dictionary<ulong, long>();
        var buffer = new byte[BlockSize];
        long rows = 0, fields = 0;
        var kept = 0;
        for (var position = from; position < to;)
        {
            var read = RandomAccess.Read(handle, buffer.AsSpan(kept, (int)Math.Min(buffer.Length - kept, to - position)), position);
            if (read == 0) break;
            position += read;
            var text = buffer.AsSpan(0, kept + read);
            int end;
            while ((end = text.IndexOf((byte)'\n')) >= 0)
            {
                var line = text[..end];
                for (var column = 0; ; column++)
                {
                    var comma = line.IndexOf((byte)',');
                    var field = comma < 0 ? line : line[..comma];
                    fields++;
                    if (column == countedColumn) CollectionsMarshal.GetValueRefOrAddDefault(counts, Key(field), out _)++;
                    if (comma < 0) break;
                    line = line[(comma + 1)..];
                }

                rows++;
                text = text[(end + 1)..];
            }

            kept = text.Length;
            text.CopyTo(buffer);
        }

        return (rows, fields, counts);
    }

    private static ulong Key(ReadOnlySpan<byte> field)
    {
        var key = (ulong)field.Length;
        foreach (var value in field) key = (key * 0x100000001B3UL) ^ value;
        return key;
    }
}
