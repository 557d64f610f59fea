namespace ScreenStats.Records.Formats;

/// <summary>Counts line ends: LF, CR LF, and a CR that stands alone.</summary>
internal static class LineEnds
{
    public static int Count(ReadOnlySpan<byte> text)
    {
        var count = text.Count((byte)'\n');
        if (text.Contains((byte)'\r')) count += text.Count((byte)'\r') - text.Count("\r\n"u8);
        return count;
    }

    public static int Count(string text)
    {
        var count = text.AsSpan().Count('\n');
        if (text.Contains('\r', StringComparison.Ordinal)) count += text.AsSpan().Count('\r') - text.AsSpan().Count("\r\n");
        return count;
    }
}
