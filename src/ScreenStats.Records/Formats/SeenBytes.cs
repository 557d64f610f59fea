using System.IO.Hashing;

namespace ScreenStats.Records.Formats;

/// <summary>A quick checksum of bytes as they come by, one behind the other.</summary>
/// <param name="skipped">Bytes at the beginning that it leaves out.</param>
internal sealed class SeenBytes(int skipped = 0)
{
    private readonly XxHash128 hash = new();
    private int left = skipped;

    public UInt128 Value => hash.GetCurrentHashAsUInt128();

    public void Add(ReadOnlySpan<byte> bytes)
    {
        var skip = Math.Min(left, bytes.Length);
        left -= skip;
        hash.Append(bytes[skip..]);
    }
}
