namespace ScreenStats.Records.Formats;

/// <summary>Reading showed that a file is written otherwise than its beginning promised: start again, knowing it.</summary>
/// <param name="path">The file.</param>
/// <param name="encoding">How it is written.</param>
internal sealed class ReadAgainException(string path, TextEncoding encoding) : Exception
{
    public string Path { get; } = path;

    public TextEncoding Encoding { get; } = encoding;
}
