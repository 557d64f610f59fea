using System.Buffers;
using System.Text;

namespace ScreenStats.Records.Formats.Converting;

/// <summary>Writes records as CSV in UTF-8 and remembers where each comes from.</summary>
/// <param name="stream">Where they are written.</param>
/// <param name="grown">Told of each further piece in bytes before more is written; may refuse.</param>
internal sealed class CsvFileWriter(Stream stream, Action<long> grown) : IDisposable
{
    private static readonly SearchValues<char> Special = SearchValues.Create(",\"\r\n");
    private readonly StreamWriter writer = new(stream, new UTF8Encoding(false), 1 << 16) { NewLine = "\n" };
    private long line = 1;
    private long told;

    /// <summary>Where each record comes from.</summary>
    public LineMap Lines { get; } = new();

    /// <summary>Writes a record; fields at its end that are empty are left out, and an empty record altogether.</summary>
    /// <param name="source">Its line or row in the original file.</param>
    /// <param name="fields">Its fields.</param>
    /// <param name="least">Fields that are written even where they are empty.</param>
    public void Write(long source, ReadOnlySpan<string?> fields, int least = 0)
    {
        var count = fields.Length;
        while (count > least && string.IsNullOrEmpty(fields[count - 1])) count--;
        if (count == 0) return;
        Lines.Add(line, source);
        for (var f = 0; f < count; f++)
        {
            if (f > 0) writer.Write(',');
            Field(fields[f] ?? "");
        }

        writer.Write('\n');
        line++;
        var length = stream.Position;
        if (length == told) return;
        grown(length - told);
        told = length;
    }

    public void Dispose() => writer.Dispose();

    private void Field(string text)
    {
        if (!text.AsSpan().ContainsAny(Special))
        {
            writer.Write(text);
            return;
        }

        line += LineEnds.Count(text);
        writer.Write('"');
        writer.Write(text.Replace("\"", "\"\"", StringComparison.Ordinal));
        writer.Write('"');
    }
}
