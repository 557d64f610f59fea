using System.Text;

namespace ScreenStats.Records.Formats;

/// <summary>What follows from an encoding.</summary>
internal static class TextEncodings
{
    private static readonly Encoding Western = CodePagesEncodingProvider.Instance.GetEncoding(1252)!;

    /// <summary>Bytes of the mark at the start of the file.</summary>
    public static int MarkLength(this TextEncoding encoding) => encoding switch
    {
        TextEncoding.Utf8WithMark => 3,
        TextEncoding.Utf16LittleEndian or TextEncoding.Utf16BigEndian => 2,
        _ => 0,
    };

    public static bool IsUtf8(this TextEncoding encoding) => encoding is TextEncoding.Utf8 or TextEncoding.Utf8WithMark;

    public static Encoding Decoder(this TextEncoding encoding) => encoding switch
    {
        TextEncoding.Utf16LittleEndian => Encoding.Unicode,
        TextEncoding.Utf16BigEndian => Encoding.BigEndianUnicode,
        TextEncoding.Windows1252 => Western,
        _ => Encoding.UTF8,
    };

    public static string Name(this TextEncoding encoding) => encoding switch
    {
        TextEncoding.Utf8 => "UTF-8",
        TextEncoding.Utf8WithMark => "UTF-8 with byte order mark",
        TextEncoding.Utf16LittleEndian => "UTF-16 little endian",
        TextEncoding.Utf16BigEndian => "UTF-16 big endian",
        _ => "Windows-1252",
    };

    /// <summary>Length in the file of text that is here as UTF-8.</summary>
    public static int SourceLength(this TextEncoding encoding, ReadOnlySpan<byte> utf8)
    {
        if (encoding.IsUtf8()) return utf8.Length;
        var units = 0;
        foreach (var b in utf8)
        {
            if ((b & 0xC0) != 0x80) units++;
            if (b >= 0xF0) units++;
        }

        return encoding == TextEncoding.Windows1252 ? units : units * 2;
    }
}
