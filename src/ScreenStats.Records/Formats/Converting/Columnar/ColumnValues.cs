using System.Numerics;
using Parquet;
using Parquet.Schema;

namespace ScreenStats.Records.Formats.Converting.Columnar;

/// <summary>The values of one column in one row group, written as a CSV export would hold them, one row after the other.</summary>
internal abstract class ColumnValues
{
    /// <summary>A column that is not read: every value is blank.</summary>
    public static ColumnValues None { get; } = new Nothing();

    /// <summary>How the values of a column are held.</summary>
    public static ColumnValues Of(ColumnMeaning meaning, DataField field, ZoneClock clock) => meaning.Stored switch
    {
        Parquet.Meta.Type.BOOLEAN => new Held<bool>(field, static (value, writer) => writer.Text(value ? "true"u8 : "false"u8)),
        Parquet.Meta.Type.INT32 => Numbers32(meaning, field),
        Parquet.Meta.Type.INT64 => Numbers64(meaning, field, clock),
        Parquet.Meta.Type.FLOAT => new Held<float>(field, static (value, writer) => CellText.Fraction(writer, value, single: true)),
        Parquet.Meta.Type.DOUBLE => new Held<double>(field, static (value, writer) => CellText.Fraction(writer, value, single: false)),
        _ => Bytes(meaning, field),
    };

    /// <summary>Bytes that a value takes in memory, without its text.</summary>
    public abstract int Width { get; }

    /// <summary>Reads the values of a row group; true.</summary>
    public abstract bool Load(ParquetRowGroupReader group, int rows);

    /// <summary>Writes the value of the next row; false where it is text that is not UTF-8.</summary>
    public abstract bool Next(Utf8RecordWriter writer);

    private static Held<int> Numbers32(ColumnMeaning meaning, DataField field)
    {
        var scale = meaning.Scale;
        return meaning.Kind switch
        {
            ColumnKind.Unsigned => new Held<int>(field, static (value, writer) => CellText.Whole(writer, (uint)value)),
            ColumnKind.Decimal => new Held<int>(field, (value, writer) => CellText.Decimal(writer, value, scale)),
            ColumnKind.Day => new Held<int>(field, static (value, writer) => CellText.Day(writer, value)),
            ColumnKind.TimeOfDay => new Held<int>(field, (value, writer) => CellText.TimeOfDay(writer, value, scale)),
            _ => new Held<int>(field, static (value, writer) => CellText.Whole(writer, value)),
        };
    }

    private static Held<long> Numbers64(ColumnMeaning meaning, DataField field, ZoneClock clock)
    {
        var scale = meaning.Scale;
        var instants = meaning.Utc ? clock : null;
        return meaning.Kind switch
        {
            ColumnKind.Unsigned => new Held<long>(field, static (value, writer) => CellText.Unsigned(writer, (ulong)value)),
            ColumnKind.Decimal => new Held<long>(field, (value, writer) => CellText.Decimal(writer, value, scale)),
            ColumnKind.Moment => new Held<long>(field, (value, writer) => CellText.Moment(writer, value, scale, instants)),
            ColumnKind.TimeOfDay => new Held<long>(field, (value, writer) => CellText.TimeOfDay(writer, value, scale)),
            _ => new Held<long>(field, static (value, writer) => CellText.Whole(writer, value)),
        };
    }

    private static Held<ReadOnlyMemory<byte>> Bytes(ColumnMeaning meaning, DataField field)
    {
        var scale = meaning.Scale;
        return meaning.Kind switch
        {
            ColumnKind.Decimal => new Held<ReadOnlyMemory<byte>>(field, (value, writer) => CellText.Decimal(writer, new BigInteger(value.Span, isUnsigned: false, isBigEndian: true), scale)),
            ColumnKind.Fraction => new Held<ReadOnlyMemory<byte>>(field, static (value, writer) => CellText.Fraction(writer, (float)BitConverter.ToHalf(value.Span), single: true)),
            ColumnKind.Identifier => new Held<ReadOnlyMemory<byte>>(field, static (value, writer) => CellText.Identifier(writer, value.Span)),
            _ => new Held<ReadOnlyMemory<byte>>(field, static (value, writer) => writer.Text(value.Span)) { IsText = true },
        };
    }

    private sealed class Nothing : ColumnValues
    {
        public override int Width => 0;

        public override bool Load(ParquetRowGroupReader group, int rows) => true;

        public override bool Next(Utf8RecordWriter writer)
        {
            writer.Blank();
            return true;
        }
    }

    private sealed class Held<T>(DataField stored, Action<T, Utf8RecordWriter> write) : ColumnValues
        where T : struct
    {
        private T[] values = [];
        private int[] levels = [];
        private int row;
        private int next;

        /// <summary>True where the bytes are text, so that they must be UTF-8.</summary>
        public bool IsText { get; init; }

        public override int Width => System.Runtime.CompilerServices.Unsafe.SizeOf<T>() + (stored.MaxDefinitionLevel > 0 ? sizeof(int) : 0);

        public override bool Load(ParquetRowGroupReader group, int rows)
        {
            var optional = stored.MaxDefinitionLevel > 0;
            if (values.Length < rows)
            {
                values = new T[rows];
                levels = optional ? new int[rows] : [];
            }
            else
            {
                // Where pages hold fewer values than they say, those of the row group before must not stand in their place.
                Array.Clear(values);
                Array.Clear(levels);
            }

            row = next = 0;
            group.ReadRawAsync(stored, values.AsMemory(0, rows), optional ? levels.AsMemory(0, rows) : default(Memory<int>?), null).AsTask().GetAwaiter().GetResult();
            return true;
        }

        public override bool Next(Utf8RecordWriter writer)
        {
            if (levels.Length > 0 && levels[row++] == 0)
            {
                writer.Blank();
                return true;
            }

            var value = values[next++];
            if (IsText && value is ReadOnlyMemory<byte> text && !System.Text.Unicode.Utf8.IsValid(text.Span)) return false;
            write(value, writer);
            return true;
        }
    }
}
