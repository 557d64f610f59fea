using Parquet.Meta;

namespace ScreenStats.Records.Formats.Converting.Columnar;

/// <summary>
/// Looks through the heads of the pages of a column before a library reads them: what they claim must lie within the file and add
/// up to what the footer says.
/// </summary>
internal static class ParquetPages
{
    private const int UsualHead = 4_096;
    private const int LongestHead = 8 << 20;
    private const int MostStructures = 1_000;
    private const int Kind = 1, Unpacked = 2, Packed = 3;
    private const int Data = 5 * 16, Dictionary = 7 * 16, DataOfSecondKind = 8 * 16;
    private const int Values = 1, EncodingOfData = 2, EncodingOfSecondKind = 4;

    /// <summary>Bytes that the pages of a column of a row group unpack to.</summary>
    /// <param name="file">The file.</param>
    /// <param name="end">Where its pages end at the latest.</param>
    /// <param name="column">What the footer says of the column.</param>
    /// <param name="name">The file's name.</param>
    /// <exception cref="FileFault">They do not add up.</exception>
    public static long Unpacks(Stream file, long end, ColumnMetaData column, string name)
    {
        long[] offsets = [column.DictionaryPageOffset ?? 0, column.DataPageOffset, column.IndexPageOffset ?? 0];
        var at = offsets.Where(offset => offset != 0).DefaultIfEmpty(0).Min();
        long total = 0;
        Span<long> head = stackalloc long[16 * 16];
        for (long values = 0; values < column.NumValues;)
        {
            if (at < 4 || at >= end) throw ParquetFault.Damaged(name);
            at += Head(file, at, end, head, name);
            if (head[Packed] < 0 || head[Unpacked] < 0 || head[Unpacked] > int.MaxValue || head[Packed] > end - at) throw ParquetFault.Damaged(name);
            at += head[Packed];
            total += head[Unpacked];
            long more;
            switch ((PageType)head[Kind])
            {
                case PageType.DICTIONARY_PAGE:
                    more = 0;
                    // Values of a dictionary are written plain: a bit each at the least.
                    if (head[Dictionary + Values] < 0 || head[Dictionary + Values] > head[Unpacked] * 8) throw ParquetFault.Damaged(name);
                    break;
                case PageType.DATA_PAGE:
                    more = head[Data + Values];
                    Encoded(column, head[Data + EncodingOfData], name);
                    break;
                case PageType.DATA_PAGE_V2:
                    more = head[DataOfSecondKind + Values];
                    Encoded(column, head[DataOfSecondKind + EncodingOfSecondKind], name);
                    break;
                default:
                    throw ParquetFault.Unknown(name);
            }

            if (more < 0 || more > column.NumValues - values) throw ParquetFault.Damaged(name);
            values += more;
        }

        return total;
    }

    /// <summary>The library misreads bits in runs, which a few writers use for true and false; saying so is better than wrong values.</summary>
    private static void Encoded(ColumnMetaData column, long encoding, string name)
    {
        if (column.Type == Parquet.Meta.Type.BOOLEAN && encoding == (long)Encoding.RLE)
            throw ParquetFault.Column(name, ParquetFile.Shown(string.Join('.', column.PathInSchema), -1), "holds true and false in runs, which is not read. Write it as text or with pages of the first version");
    }

    private static int Head(Stream file, long at, long end, Span<long> found, string name)
    {
        for (long room = UsualHead; ; room *= 16)
        {
            var bytes = new byte[Math.Min(Math.Min(room, LongestHead), end - at)];
            file.Position = at;
            file.ReadExactly(bytes);
            found.Clear();
            var length = ThriftScan.Length(bytes, found, MostStructures);
            if (length > 0) return length;
            if (length == -1 || bytes.Length < room) throw ParquetFault.Damaged(name);
        }
    }
}
