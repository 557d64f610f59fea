namespace ScreenStats.Records.PersonLog.Scanning;

/// <summary>A set of record numbers: one bit a row, and nothing while it is empty.</summary>
internal sealed class RecordSet
{
    private ulong[] bits = [];

    public void Add(uint record)
    {
        var word = (int)(record >> 6);
        if (word >= bits.Length) Array.Resize(ref bits, Math.Max(word + 1, 2 * bits.Length));
        bits[word] |= 1ul << (int)(record & 63);
    }

    public bool Contains(uint record)
    {
        var word = (int)(record >> 6);
        return word < bits.Length && (bits[word] & (1ul << (int)(record & 63))) != 0;
    }
}
