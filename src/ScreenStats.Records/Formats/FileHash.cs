using System.Security.Cryptography;

namespace ScreenStats.Records.Formats;

/// <summary>The SHA-256 of a file, worked out on a thread of its own while others read the same bytes.</summary>
internal static class FileHash
{
    public static Task<string> Start(string path) => Task.Factory.StartNew(() => Of(path), CancellationToken.None, TaskCreationOptions.LongRunning, TaskScheduler.Default);

    private static string Of(string path)
    {
        using var handle = File.OpenHandle(path, FileMode.Open, FileAccess.Read, FileShare.Read, FileOptions.SequentialScan);
        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        var buffer = new byte[1 << 18];
        for (long offset = 0; ;)
        {
            var read = RandomAccess.Read(handle, buffer, offset);
            if (read == 0) return Convert.ToHexStringLower(hash.GetHashAndReset());
            hash.AppendData(buffer.AsSpan(0, read));
            offset += read;
        }
    }
}
