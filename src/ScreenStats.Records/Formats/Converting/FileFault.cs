namespace ScreenStats.Records.Formats.Converting;

/// <summary>A file cannot be turned into text.</summary>
/// <param name="code">Stable code of the diagnostic.</param>
/// <param name="message">What, where, what to do; never the text of a cell.</param>
/// <param name="line">The line or row, where there is one.</param>
internal sealed class FileFault(string code, string message, long? line = null) : Exception(message)
{
    public string Code { get; } = code;

    public long? Line { get; } = line;
}
