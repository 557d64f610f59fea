using System.Security.Cryptography;
using ScreenStats.Records.Cache;

namespace ScreenStats.Records.Formats;

/// <summary>The SHA-256 of a file, worked out on a thread of its own while others read the same bytes.</summary>
internal static class FileHash
{
    public static Task<string> Start(string path) => Task.Factory.StartNew(() => Of(path, null, CancellationToken.None), CancellationToken.None, TaskCreationOptions.LongRunning, TaskScheduler.Default);

    /// <summary>The same with a quick checksum of the bytes behind the first few.</summary>
    /// <param name="path">The file.</param>
    /// <param name="skipped">Bytes that the checksum leaves out: the mark of the encoding.</param>
    /// <param name="cancelled">Stops it.</param>
    public static ContentHash WithChecksum(string path, int skipped, CancellationToken cancelled)
    {
        var checksum = new SeenBytes(skipped);
        return new ContentHash(Of(path, checksum, cancelled), checksum.Value);
    }

    private static string Of(string path, SeenBytes? checksum, CancellationToken cancelled)
    {
        using var handle = File.OpenHandle(path, FileMode.Open, FileAccess.Read, FileShare.Read, FileOptions.SequentialScan);
        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        var buffer = new byte[1 << 18];
        for (long offset = 0; ;)
        {
            cancelled.ThrowIfCancellationRequested();
            var read = RandomAccess.Read(handle, buffer, offset);
            if (read == 0) return Convert.ToHexStringLower(hash.GetHashAndReset());
            hash.AppendData(buffer.AsSpan(0, read));
            checksum?.Add(buffer.AsSpan(0, read));
            offset += read;
        }
    }
}
