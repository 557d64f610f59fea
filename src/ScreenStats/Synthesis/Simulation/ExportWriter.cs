using System.Text;

namespace ScreenStats.Synthesis.Simulation;

/// <summary>Comma-separated bytes into a stream: no culture, no allocation for each row.</summary>
internal sealed class ExportWriter : IDisposable
{
    private const int Room = 4_096;
    private readonly byte[] buffer = new byte[1 << 16];
    private readonly Stream stream;
    private readonly bool carriageReturn;
    private int used;
    private bool inRow;

    public ExportWriter(Stream stream, bool carriageReturn, bool byteOrderMark)
    {
        this.stream = stream;
        this.carriageReturn = carriageReturn;
        if (byteOrderMark) Append([0xEF, 0xBB, 0xBF]);
    }

    /// <summary>The UTF-8 bytes of a field, quoted where it needs to be.</summary>
    public static byte[] Field(string text) => Encoding.UTF8.GetBytes(
        text.AsSpan().IndexOfAny(",\"\r\n") < 0 ? text : '"' + text.Replace("\"", "\"\"", StringComparison.Ordinal) + '"');

    /// <summary>Starts the next field of the row.</summary>
    public void Next()
    {
        if (inRow) buffer[used++] = (byte)',';
        inRow = true;
    }

    /// <summary>Appends bytes to the field.</summary>
    public void Append(ReadOnlySpan<byte> bytes)
    {
        bytes.CopyTo(buffer.AsSpan(used));
        used += bytes.Length;
    }

    /// <summary>Appends a number with at least so many digits.</summary>
    public void Number(long value, int digits)
    {
        Span<byte> text = stackalloc byte[20];
        var at = text.Length;
        do
        {
            text[--at] = (byte)('0' + (value % 10));
            value /= 10;
            digits--;
        }
        while (value > 0 || digits > 0);
        Append(text[at..]);
    }

    /// <summary>Appends a number in hexadecimal with exactly so many digits.</summary>
    public void Hexadecimal(uint value, int digits)
    {
        for (var shift = 4 * (digits - 1); shift >= 0; shift -= 4) buffer[used++] = "0123456789abcdef"u8[(int)(value >> shift) & 15];
    }

    /// <summary>Appends two digits.</summary>
    public void TwoDigits(int value)
    {
        buffer[used++] = (byte)('0' + (value / 10));
        buffer[used++] = (byte)('0' + (value % 10));
    }

    /// <summary>A whole field.</summary>
    public void Add(ReadOnlySpan<byte> field)
    {
        Next();
        Append(field);
    }

    /// <summary>Ends the row.</summary>
    public void EndRow()
    {
        if (carriageReturn) buffer[used++] = (byte)'\r';
        buffer[used++] = (byte)'\n';
        inRow = false;
        if (used > buffer.Length - Room) Flush();
    }

    public void Dispose() => Flush();

    private void Flush()
    {
        stream.Write(buffer, 0, used);
        used = 0;
    }
}
