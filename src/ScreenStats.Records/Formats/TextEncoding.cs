namespace ScreenStats.Records.Formats;

/// <summary>How the characters of a file are written.</summary>
internal enum TextEncoding
{
    Utf8 = 0,
    Utf8WithMark = 1,
    Utf16LittleEndian = 2,
    Utf16BigEndian = 3,
    Windows1252 = 4,
}
