namespace ScreenStats.Benchmarks.Whole;

/// <summary>The bytes of a file, read on a few threads and not looked at: what no reader can be faster than.</summary>
internal static class RawBytes
{
    private const int Block = 1 << 20;

    public static long Run(string file, int threads)
    {
        var length = new FileInfo(file).Length;
        var blocks = (length + Block - 1) / Block;
        var (next, read) = (-1L, 0L);
        Parallel.For(0, threads, new ParallelOptions { MaxDegreeOfParallelism = threads }, _ =>
        {
            using var handle = File.OpenHandle(file, options: FileOptions.SequentialScan);
            var buffer = new byte[Block];
            for (var block = Interlocked.Increment(ref next); block < blocks; block = Interlocked.Increment(ref next))
            {
                Interlocked.Add(ref read, RandomAccess.Read(handle, buffer, block * Block));
            }
        });
        return read;
    }
}
