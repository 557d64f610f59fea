using System.Buffers;

namespace ScreenStats.Records.Formats.Converting.Columnar;

/// <summary>Writes records as CSV from UTF-8 and remembers where each comes from.</summary>
/// <param name="stream">Where they are written.</param>
/// <param name="grown">Told of each further piece in bytes as it is written; may refuse.</param>
internal sealed class Utf8RecordWriter(Stream stream, Action<long> grown)
{
    private const int Piece = 1 << 16;
    private static readonly SearchValues<byte> Special = SearchValues.Create(",\"\r\n"u8);
    private byte[] buffer = new byte[2 * Piece];
    private int length;
    private int begun;
    private long line = 1;
    private bool first = true;

    /// <summary>Where each record comes from.</summary>
    public LineMap Lines { get; } = new();

    /// <summary>Bytes of the record so far.</summary>
    public int RecordLength => length - begun;

    /// <summary>Begins a record.</summary>
    /// <param name="source">Its number in the original file.</param>
    public void Begin(long source)
    {
        Lines.Add(line, source);
        begun = length;
        first = true;
    }

    /// <summary>Writes a field that may need quotes.</summary>
    public void Text(ReadOnlySpan<byte> text)
    {
        if (text.IndexOfAny(Special) < 0)
        {
            text.CopyTo(Field(text.Length));
            length += text.Length;
            return;
        }

        line += LineEnds.Count(text);
        var quotes = text.Count((byte)'"');
        var to = Field(text.Length + quotes + 2);
        var at = 0;
        to[at++] = (byte)'"';
        foreach (var b in text)
        {
            if (b == (byte)'"') to[at++] = b;
            to[at++] = b;
        }

        to[at++] = (byte)'"';
        length += at;
    }

    /// <summary>Room for a field of at most so many bytes that needs no quotes; what is written must be told by <see cref="Wrote"/>.</summary>
    public Span<byte> Field(int most)
    {
        var needed = length + most + 2;
        if (needed > buffer.Length) Array.Resize(ref buffer, Math.Max(needed, buffer.Length * 2));
        if (!first) buffer[length++] = (byte)',';
        first = false;
        return buffer.AsSpan(length);
    }

    /// <summary>Tells how many bytes of the field were written.</summary>
    public void Wrote(int bytes) => length += bytes;

    /// <summary>Writes a field without a value.</summary>
    public void Blank() => Field(0);

    /// <summary>Ends the record.</summary>
    public void End()
    {
        if (length == buffer.Length) Array.Resize(ref buffer, buffer.Length * 2);
        buffer[length++] = (byte)'\n';
        line++;
        if (length >= Piece) Flush();
    }

    /// <summary>Writes what is still in the buffer.</summary>
    public void Flush()
    {
        if (length == 0) return;
        grown(length);
        stream.Write(buffer.AsSpan(0, length));
        length = 0;
        begun = 0;
    }
}
