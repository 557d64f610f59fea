using System.Runtime.CompilerServices;
using CsvHelper;

namespace ScreenStats.Records.Formats;

/// <summary>
/// Splits UTF-8 bytes that hold whole records into records and fields, by the rules of RFC 4180: a quote opens a field
/// only as its first byte; inside, a doubled quote is one quote and line breaks are text. A quote elsewhere is text.
/// Lines end with LF, CR LF or CR. The only place that knows CsvHelper.
/// </summary>
/// <remarks>
/// CsvHelper reports the first fault of a record only, so a harmless quote would hide one that is never closed: a record
/// with any fault is looked at again here (<see cref="QuoteFault"/>). Cell text never reaches an exception: values are
/// left out of its messages, and nothing is parsed by it.
/// </remarks>
internal sealed class RecordSplitter : IDisposable
{
    private readonly CsvReaderOptions options;
    private readonly byte delimiter;
    private CsvReader? reader;
    private byte[] bytes = [];
    private int first;
    private int last;
    private bool faulty;

    public RecordSplitter(byte delimiter)
    {
        this.delimiter = delimiter;
        options = new CsvReaderOptions
        {
            Separator = (char)delimiter,
            HasHeader = false,
            DetectSeparatorHint = false,
            TrackLineNumbers = true,
            IncludeValuesInExceptions = false,
            OnMalformedRecord = _ => faulty = true,
        };
    }

    /// <summary>Number of fields of the current record.</summary>
    public int FieldCount { get; private set; }

    /// <summary>Line breaks before the current record, counted from the start of the bytes given.</summary>
    public int LineBreaksBefore { get; private set; }

    /// <summary>Line breaks in all the bytes given.</summary>
    public int LineBreaks => LineEnds.Count(bytes.AsSpan(first, last - first));

    /// <summary>Offset of the current record in the array given.</summary>
    public int RecordStart { get; private set; }

    /// <summary>Offset just behind the current record's last byte, without its line end.</summary>
    public int RecordEnd { get; private set; }

    /// <summary>What is wrong with the current record's quotes.</summary>
    public QuoteFault Fault { get; private set; }

    /// <summary>Starts on new bytes: a whole number of records, the last one perhaps without its line end.</summary>
    public void Load(byte[] array, int offset, int length)
    {
        reader?.Dispose();
        bytes = array;
        first = offset;
        last = offset + length;
        FieldCount = 0;
        reader = CsvReader.Create(new ReadOnlyMemory<byte>(array, offset, length), options);
    }

    /// <summary>Moves to the next record that is not a blank line.</summary>
    public bool Next()
    {
        faulty = false;
        if (!reader!.Read())
        {
            FieldCount = 0;
            return false;
        }

        FieldCount = reader.FieldCount;
        LineBreaksBefore = (int)reader.LineNumber - 1;
        RecordStart = first + (int)reader.ByteOffset;
        RecordEnd = RecordStart + reader.RawRecord.Length;
        Fault = faulty ? QuoteFault.Of(bytes.AsSpan(RecordStart, RecordEnd - RecordStart), delimiter) : default;
        return true;
    }

    /// <summary>
    /// The field's text without its quotes; empty beyond the last field. Valid until the next field with doubled quotes is
    /// asked for, or the next record.
    /// </summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public ReadOnlySpan<byte> Field(int field) => (uint)field < (uint)FieldCount ? reader!.GetSpan(field) : default;

    /// <summary>The bytes between two offsets, as they stand in the file.</summary>
    public ReadOnlySpan<byte> Bytes(int start, int end) => bytes.AsSpan(start, end - start);

    public void Dispose() => reader?.Dispose();
}
