using System.Buffers.Binary;
using Parquet;
using Parquet.Schema;

namespace ScreenStats.Records.Tests.Formats.Columnar;

/// <summary>Parquet files for tests.</summary>
internal static class ParquetBytes
{
    /// <summary>A file with columns of text, in one row group.</summary>
    public static byte[] Of(params (string Name, string?[] Values)[] columns) => Of(new ParquetOptions { CompressionMethod = CompressionMethod.None }, columns);

    /// <summary>A file with columns of text, in one row group, written as stated.</summary>
    public static byte[] Of(ParquetOptions options, params (string Name, string?[] Values)[] columns)
    {
        using var stream = new MemoryStream();
        var schema = new ParquetSchema(columns.Select(column => (Field)new DataField<string>(column.Name)).ToArray());
        Write().GetAwaiter().GetResult();
        return stream.ToArray();

        async Task Write()
        {
            await using var writer = await ParquetWriter.CreateAsync(schema, stream, options);
            using var group = writer.CreateRowGroup();
            for (var c = 0; c < columns.Length; c++) await group.WriteAsync(schema.DataFields[c], columns[c].Values);
            group.CompleteValidate();
        }
    }

    /// <summary>The rows of a CSV text, split at every comma and line end, as columns of text; a blank field is a missing value.</summary>
    public static byte[] OfCsv(string csv)
    {
        var rows = csv.Split('\n', StringSplitOptions.RemoveEmptyEntries).Select(line => line.Split(',')).ToList();
        return Of([.. rows[0].Select((name, c) => (name, rows.Skip(1).Select(row => row[c].Length == 0 ? null : row[c]).ToArray()))]);
    }

    /// <summary>A file with nothing but a footer, in Thrift's compact protocol.</summary>
    public static byte[] WithFooter(params byte[] footer)
    {
        var bytes = new byte[4 + footer.Length + 8];
        "PAR1"u8.CopyTo(bytes);
        footer.CopyTo(bytes, 4);
        BinaryPrimitives.WriteInt32LittleEndian(bytes.AsSpan(4 + footer.Length), footer.Length);
        "PAR1"u8.CopyTo(bytes.AsSpan(8 + footer.Length));
        return bytes;
    }

    /// <summary>The same bytes with every occurrence of some replaced by as many others.</summary>
    public static byte[] Replaced(byte[] bytes, ReadOnlySpan<byte> old, ReadOnlySpan<byte> now)
    {
        var changed = bytes.ToArray();
        for (var at = 0; changed.AsSpan(at).IndexOf(old) is >= 0 and var step; at += step + old.Length) now.CopyTo(changed.AsSpan(at + step));
        return changed;
    }

    private static void CompleteValidate(this ParquetRowGroupWriter group) => group.Dispose();
}
