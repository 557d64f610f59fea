namespace ScreenStats.Records.Formats;

/// <summary>Why nothing behind a place in a file can be trusted.</summary>
internal enum BrokenFile
{
    UnclosedQuote = 0,
    RecordTooLong = 1,
}

/// <summary>A file breaks off: nothing behind this place can be split into records.</summary>
/// <param name="kind">Why.</param>
/// <param name="utf8Offset">Where, in bytes of the text as UTF-8 behind the byte order mark.</param>
internal sealed class BrokenFileException(BrokenFile kind, long utf8Offset) : Exception
{
    public BrokenFile Kind { get; } = kind;

    public long Utf8Offset { get; } = utf8Offset;
}
