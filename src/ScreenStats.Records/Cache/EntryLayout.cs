namespace ScreenStats.Records.Cache;

/// <summary>
/// An entry, in order: a few letters that say what it is; frames of rows; the tail, which holds everything else; the place of the tail; the hash of how the file was understood and that of its content; a checksum
/// of all before.
/// </summary>
internal static class EntryLayout
{
    public const int Hash = 32;
    public const int Checksum = 16;
    public const int Footer = 8 + 8 + Hash + Hash + Checksum;

    public static ReadOnlySpan<byte> Letters => "SSCACHE1"u8;
}
