// Writes the Parquet files of this folder with Apache Arrow's C++ library, through ParquetSharp, so that what is read was not written by the
// library that reads it. Run by hand, copied to a folder outside of this repository:
// dotnet run make.cs -- FOLDER
#:package ParquetSharp@25.0.1.2
#:property PublishAot=false
using ParquetSharp;

var folder = args[0];
DateTime Utc(int day, int hour, int minute, int second, int micro) => new DateTime(2026, 1, day, hour, minute, second, DateTimeKind.Utc).AddTicks(10 * micro);

Column[] Columns() =>
[
    new Column<string>("person"), new Column<string>("site"),
    new Column<DateTime>("collected_at", LogicalType.Timestamp(true, TimeUnit.Micros)),
    new Column<DateTime?>("read_at", LogicalType.Timestamp(false, TimeUnit.Millis)),
    new Column<string>("result"), new Column<string>("lot"), new Column<Date?>("lot_expiry", LogicalType.Date()),
    new Column<bool?>("symptomatic"), new Column<long?>("operator"), new Column<Guid>("kit"), new Column<int>("seen"), new Column<byte?>("small"),
    new Column<float?>("single"), new Column<double?>("double"), new Column<decimal?>("amount", LogicalType.Decimal(29, 3)),
    new Column<TimeSpan?>("time", LogicalType.Time(false, TimeUnit.Micros)), new Column<ulong>("big"), new Column<DateTimeNanos>("nanos", LogicalType.Timestamp(false, TimeUnit.Nanos)),
];

void Write(string name, WriterPropertiesBuilder properties, int groups = 1, int times = 1)
{
    using var built = properties.Build();
    using var file = new ParquetFileWriter(Path.Combine(folder, name), Columns(), built);
    for (var g = 0; g < groups; g++)
    {
        using var group = file.AppendRowGroup();
        void Put<T>(params T[] values)
        {
            using var writer = group.NextColumn().LogicalWriter<T>();
            for (var t = 0; t < times; t++) writer.WriteBatch(values);
        }

        Put("p1", "p2", "p,3\n\"x\"", "");
        Put("North", "North", "S\u00fcd", "North");
        Put(Utc(5, 8, 0, 0, 0), Utc(5, 8, 5, 30, 0), Utc(6, 23, 59, 59, 123_400), new DateTime(1969, 12, 31, 23, 59, 59, DateTimeKind.Utc));
        Put<DateTime?>(new DateTime(2026, 1, 5, 8, 15, 0), null, new DateTime(2026, 1, 6, 0, 0, 0, 7), null);
        Put("neg", "pos", "neg", "inv");
        Put<string>("A-1", null, "A-1", "B-2");
        Put<Date?>(new Date(2026, 5, 31), null, new Date(1969, 7, 1), null);
        Put<bool?>(true, false, null, false);
        Put<long?>(7, null, -12, 9_000_000_000_000);
        Put(new Guid("00112233-4455-6677-8899-aabbccddeeff"), Guid.Empty, Guid.Empty, Guid.Empty);
        Put(1, -2, int.MaxValue, int.MinValue);
        Put<byte?>(1, 255, null, 0);
        Put<float?>(1.5f, null, 0.1f, 3f);
        Put<double?>(2, 0.1, double.NaN, null);
        Put<decimal?>(12.500m, -0.007m, null, 100m);
        Put<TimeSpan?>(new TimeSpan(0, 9, 30, 0), null, TimeSpan.FromMilliseconds(1), TimeSpan.Zero);
        Put(0ul, ulong.MaxValue, 1ul, 2ul);
        Put(new DateTimeNanos(1_767_600_000_000_000_001), new DateTimeNanos(0), new DateTimeNanos(-1), new DateTimeNanos(1_767_600_000_500_000_000));
    }

    file.Close();
}

WriterPropertiesBuilder New() => new();
Write("plain.parquet", New().Compression(Compression.Uncompressed).DisableDictionary());
Write("dictionary-snappy.parquet", New().Compression(Compression.Snappy), groups: 2, times: 3);
Write("second-pages-zstd.parquet", New().Compression(Compression.Zstd).DataPageVersion(ParquetDataPageVersion.V2).Encoding("symptomatic", Encoding.Plain).DisableDictionary("symptomatic"), groups: 2, times: 3);
Write("gzip.parquet", New().Compression(Compression.Gzip));
Write("brotli.parquet", New().Compression(Compression.Brotli));
Write("lz4.parquet", New().Compression(Compression.Lz4));
Write("lz4-hadoop.parquet", New().Compression(Compression.Lz4Hadoop));
Write("delta.parquet", New().DisableDictionary().Encoding("person", Encoding.DeltaByteArray).Encoding("site", Encoding.DeltaLengthByteArray).Encoding("operator", Encoding.DeltaBinaryPacked).Encoding("seen", Encoding.DeltaBinaryPacked).Encoding("double", Encoding.ByteStreamSplit), groups: 1, times: 40);
Write("runs-of-truth.parquet", New().DataPageVersion(ParquetDataPageVersion.V2).Encoding("symptomatic", Encoding.Rle), times: 20);

// A list, a structure, bytes that are not text and times of 96 bits, beside columns that are read.
{
    Column[] columns = [new Column<string>("person"), new Column<string[]>("contacts"), new Column<byte[]>("photo"), new Column<string>("site"), new Column<DateTime>("collected_at", LogicalType.Timestamp(true, TimeUnit.Millis)), new Column<string>("result")];
    using var file = new ParquetFileWriter(Path.Combine(folder, "nested.parquet"), columns);
    using var group = file.AppendRowGroup();
    using (var w = group.NextColumn().LogicalWriter<string>()) w.WriteBatch(["p1", "p2"]);
    using (var w = group.NextColumn().LogicalWriter<string[]>()) w.WriteBatch([["p7", "p8"], []]);
    using (var w = group.NextColumn().LogicalWriter<byte[]>()) w.WriteBatch([[1, 2, 0xFF], [3]]);
    using (var w = group.NextColumn().LogicalWriter<string>()) w.WriteBatch(["North", "North"]);
    using (var w = group.NextColumn().LogicalWriter<DateTime>()) w.WriteBatch([Utc(5, 8, 0, 0, 0), Utc(5, 9, 0, 0, 0)]);
    using (var w = group.NextColumn().LogicalWriter<string>()) w.WriteBatch(["neg", "pos"]);
    file.Close();
}

// Encrypted, with a footer that is hidden and with one that is not.
foreach (var plain in new[] { false, true })
{
    using var builder = new FileEncryptionPropertiesBuilder(Encoding8("0123456789012345"));
    using var encryption = (plain ? builder.SetPlaintextFooter() : builder).Build();
    using var properties = New().Encryption(encryption).Build();
    using var file = new ParquetFileWriter(Path.Combine(folder, plain ? "encrypted-plain-footer.parquet" : "encrypted.parquet"), [new Column<string>("person")], properties);
    using var group = file.AppendRowGroup();
    using (var w = group.NextColumn().LogicalWriter<string>()) w.WriteBatch(["p1"]);
    file.Close();
}

static byte[] Encoding8(string text) => System.Text.Encoding.ASCII.GetBytes(text);
