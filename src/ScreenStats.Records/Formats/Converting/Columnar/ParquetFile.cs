using System.Buffers.Binary;
using Parquet;
using Parquet.Meta;
using Parquet.Schema;
using ScreenStats.Counting.Diagnostics;
using ScreenStats.Records.Deidentification;
using ScreenStats.Records.Understanding;

namespace ScreenStats.Records.Formats.Converting.Columnar;

/// <summary>
/// Turns a Parquet file into CSV, row group by row group. The only place that knows Parquet.Net, of which only what values are stored
/// as is used: what they mean is read off the schema here, so that text stays bytes and no time changes its kind on the way.
/// </summary>
internal sealed class ParquetFile(string name, HeadingSearch search, TimeZoneInfo? zone, UnpackingRoom room, Action tick)
{
    /// <summary>Bytes that the values of a row group may take in memory.</summary>
    public const long LargestGroup = 2L << 30;

    private const int LongestFooter = 32 << 20;
    private const int MostStructures = 2_000_000;
    private const int Tail = 8;
    private const int RowsBetweenTicks = 1_024;

    private readonly List<Diagnostic> notes = [];
    private long most;
    private long written;

    /// <summary>What is to be said of the columns.</summary>
    public IReadOnlyList<Diagnostic> Notes => notes;

    /// <summary>How messages speak of a column: by its name, unless that may itself be somebody's.</summary>
    public static string Shown(string column, int position) => ShownHeading.Of(column).Length > 0
        ? $"\"{column}\""
        : position < 0 ? "(with a name that is not shown)" : $"number {Validation.FindingTexts.Figure(position + 1)}";

    /// <summary>Writes the rows of a Parquet file as CSV, below a record with the names of its columns.</summary>
    /// <exception cref="FileFault">It cannot be read.</exception>
    public FilePart Convert(Stream file, FileStream to)
    {
        most = UnpackingRoom.AlwaysAllowed + (UnpackingRoom.MostTimes * file.Length);
        var end = CheckEnds(file);
        return Rows(ByLibrary(() => ParquetReader.CreateAsync(file, leaveStreamOpen: true).GetAwaiter().GetResult()), file, end, to);
    }

    private T ByLibrary<T>(Func<T> read)
    {
        try
        {
            return read();
        }
#pragma warning disable CA1031 // The library fails on damaged files with exceptions of many kinds, whose texts may quote what they hold; on lengths that are lies it asks for more memory than there is.
        catch (Exception)
#pragma warning restore CA1031
        {
            throw ParquetFault.Unknown(name);
        }
    }

    /// <summary>Where the footer begins, once it is known to be one that can be read.</summary>
    private long CheckEnds(Stream file)
    {
        Span<byte> head = stackalloc byte[4];
        var got = file.ReadAtLeast(head, 4, throwOnEndOfStream: false);
        if (got == 0) throw new FileFault(ReadingDiagnostics.EmptyFile, FileSniffer.Empty(name));
        if (head.SequenceEqual("PARE"u8)) throw ParquetFault.Encrypted(name);
        if (!head.SequenceEqual("PAR1"u8)) throw ParquetFault.NotParquet(name);
        if (file.Length < 4 + Tail) throw ParquetFault.CutOff(name);
        Span<byte> tail = stackalloc byte[Tail];
        file.Position = file.Length - Tail;
        file.ReadExactly(tail);
        if (tail[4..].SequenceEqual("PARE"u8)) throw ParquetFault.Encrypted(name);
        if (!tail[4..].SequenceEqual("PAR1"u8)) throw ParquetFault.CutOff(name);
        var length = BinaryPrimitives.ReadUInt32LittleEndian(tail);
        if (length > file.Length - 4 - Tail) throw ParquetFault.Damaged(name);
        if (length > LongestFooter) throw ParquetFault.Suspicious(name);
        var footer = new byte[length];
        file.Position = file.Length - Tail - length;
        file.ReadExactly(footer);
        if (ThriftScan.Length(footer, [], MostStructures) < 0) throw ParquetFault.Damaged(name);
        file.Position = 0;
        return file.Length - Tail - length;
    }

    private FilePart Rows(ParquetReader reader, Stream file, long end, FileStream to)
    {
        var metadata = reader.Metadata!;
        if (metadata.EncryptionAlgorithm is not null) throw ParquetFault.Encrypted(name);
        var columns = Columns(metadata.Schema, out var read);
        Bare(metadata, read);
        var fields = ByLibrary(() => reader.Schema.Fields.Cast<DataField>().ToList());
        var values = new ColumnValues[columns.Count];
        var clock = new ZoneClock(zone);
        for (int c = 0, f = 0; c < columns.Count; c++) values[c] = columns[c].Unsupported is null ? ColumnValues.Of(columns[c], fields[f++], clock) : ColumnValues.None;
        Claims(metadata, columns.Count);

        var writer = new Utf8RecordWriter(to, Grown);
        writer.Begin(0);
        foreach (var column in columns) writer.Text(System.Text.Encoding.UTF8.GetBytes(column.Name));
        writer.End();
        long record = 0;
        foreach (var group in reader.RowGroups)
        {
            var rows = Check(group.RowGroup, columns, values, file, end);
            foreach (var column in values)
            {
                tick();
                ByLibrary(() => column.Load(group, rows));
            }

            for (var row = 0; row < rows; row++)
            {
                if (row % RowsBetweenTicks == 0) tick();
                writer.Begin(++record);
                for (var c = 0; c < values.Length; c++)
                {
                    if (!values[c].Next(writer)) throw ParquetFault.NotUtf8(name, Shown(columns[c].Name, c), record);
                }

                if (writer.RecordLength > BlockReader.LongestRecord) throw ParquetFault.RecordTooLong(name, record);
                writer.End();
            }
        }

        writer.Flush();
        to.Flush();
        var shape = new FileShape(TextEncoding.Utf8, (byte)',', [.. columns.Select(column => column.Name.Trim())], 0, 1, 0, record > 0, to.Position);
        return new FilePart(to.Name, null, false, writer.Lines, shape);
    }

    /// <summary>The columns; one that cannot be read stops the reading only where something is to be read from it.</summary>
    private List<ColumnMeaning> Columns(List<SchemaElement> schema, out List<SchemaElement> read)
    {
        var columns = new List<ColumnMeaning>();
        read = [];
        var at = 1;
        for (var child = 0; child < (schema.Count > 0 ? schema[0].NumChildren ?? 0 : 0); child++)
        {
            if (at >= schema.Count) throw ParquetFault.Damaged(name);
            columns.Add(ColumnMeaning.Of(schema[at]));
            if (columns[^1].Unsupported is null) read.Add(schema[at]);
            at = Behind(schema, at);
        }

        if (at < schema.Count) throw ParquetFault.Damaged(name);
        if (columns.Count == 0) throw ParquetFault.NoColumns(name);
        if (columns.Count > HeadingMatcher.MostHeadings)
        {
            throw new FileFault(ReadingDiagnostics.TooManyColumns,
                $"{name} has {Validation.FindingTexts.Figure(columns.Count)} columns; at most {Validation.FindingTexts.Figure(HeadingMatcher.MostHeadings)} are read. Export only the columns that are needed.");
        }

        var repeated = new List<Diagnostic>();
        HeadingMatcher.Repeated(name, [.. columns.Select(column => TextFold.Fold(column.Name))], null, repeated);
        if (repeated.Count > 0) throw new FileFault(repeated[0].Code, repeated[0].Message);
        for (var c = 0; c < columns.Count; c++)
        {
            if (columns[c].Unsupported is not { } why) continue;
            if (search.Recognised([columns[c].Name.Trim()]) > 0) throw ParquetFault.Column(name, Shown(columns[c].Name, c), why);
            notes.Add(ParquetFault.LeftOut(name, Shown(columns[c].Name, c), why));
        }

        return columns;
    }

    /// <summary>Where the element behind an element and all within it stands.</summary>
    private int Behind(List<SchemaElement> schema, int at)
    {
        // Counted instead of descended: elements that are still to come at any depth.
        for (long open = 1; open > 0; open--, at++)
        {
            if (at >= schema.Count || schema[at].NumChildren is < 0) throw ParquetFault.Damaged(name);
            open += schema[at].NumChildren ?? 0;
        }

        return at;
    }

    /// <summary>Takes from the schema what values mean and what is not read, so that the library reads what is stored and nothing else.</summary>
    private static void Bare(FileMetaData metadata, List<SchemaElement> read)
    {
        var root = metadata.Schema[0];
        foreach (var element in read)
        {
            element.LogicalType = null;
            element.ConvertedType = null;
        }

        root.NumChildren = read.Count;
        metadata.Schema.Clear();
        metadata.Schema.Add(root);
        metadata.Schema.AddRange(read);
        foreach (var column in metadata.RowGroups.SelectMany(group => group.Columns))
        {
            if (column.MetaData is not null) column.MetaData.Statistics = null;
        }
    }

    /// <summary>Holds what the footer claims against the length of the file, before anything is made room for.</summary>
    private void Claims(FileMetaData metadata, int columns)
    {
        long rows = 0;
        foreach (var group in metadata.RowGroups)
        {
            if (group.NumRows < 0 || group.NumRows > int.MaxValue) throw ParquetFault.Damaged(name);
            rows += group.NumRows;
        }

        if (rows != metadata.NumRows) throw ParquetFault.Damaged(name);
        if (rows > most / columns) throw ParquetFault.Suspicious(name);
    }

    private int Check(RowGroup group, List<ColumnMeaning> columns, ColumnValues[] values, Stream file, long end)
    {
        var rows = (int)group.NumRows;
        var chunks = new Dictionary<string, ColumnChunk>(StringComparer.Ordinal);
        foreach (var chunk in group.Columns)
        {
            if (chunk.CryptoMetadata is not null || chunk.EncryptedColumnMetadata is not null) throw ParquetFault.Encrypted(name);
            if (!string.IsNullOrEmpty(chunk.FilePath)) throw ParquetFault.Elsewhere(name);
            if (chunk.MetaData is { PathInSchema: [var only] } && !chunks.TryAdd(only, chunk)) throw ParquetFault.Damaged(name);
        }

        long memory = 0;
        for (var c = 0; c < columns.Count; c++)
        {
            if (columns[c].Unsupported is not null) continue;
            if (!chunks.TryGetValue(columns[c].Name, out var chunk)) throw ParquetFault.Damaged(name);
            var data = chunk.MetaData!;
            if (data.NumValues != rows || data.Type != columns[c].Stored) throw ParquetFault.Damaged(name);
            if (data.Codec is not (CompressionCodec.UNCOMPRESSED or CompressionCodec.SNAPPY or CompressionCodec.GZIP or CompressionCodec.BROTLI or CompressionCodec.ZSTD or CompressionCodec.LZ4_RAW))
                throw ParquetFault.Compression(name);
            memory += ParquetPages.Unpacks(file, end, data, name) + ((long)rows * values[c].Width);
            if (memory > LargestGroup) throw ParquetFault.GroupTooLarge(name, rows);
        }

        return rows;
    }

    private void Grown(long bytes)
    {
        written += bytes;
        if (written > most) throw ParquetFault.Suspicious(name);
        room.Take(bytes, name);
    }
}
