using ScreenStats.Counting.Diagnostics;
using ScreenStats.Records.Validation;

namespace ScreenStats.Records.Formats.Converting.Columnar;

/// <summary>What is said where a Parquet file cannot be read.</summary>
internal static class ParquetFault
{
    private const string Anew = "Export it again, or export it as CSV.";

    public static FileFault NotParquet(string name) => new(ReadingDiagnostics.UnreadableParquet,
        $"{name} is no Parquet file, as its name says. If it is text, name it .csv; else export it again.");

    public static FileFault CutOff(string name) => new(ReadingDiagnostics.UnreadableParquet,
        $"{name} is cut off: it does not end as a Parquet file does. Copy or export it again.");

    public static FileFault Damaged(string name) => new(ReadingDiagnostics.UnreadableParquet,
        $"{name} is damaged: what it says of itself and what it holds do not agree. Copy or export it again.");

    public static FileFault Encrypted(string name) => new(ReadingDiagnostics.UnreadableParquet,
        $"{name} is encrypted, and no key is known here. Have it written without encryption where it is made, or export it as CSV.");

    public static FileFault Elsewhere(string name) => new(ReadingDiagnostics.UnreadableParquet,
        $"{name} refers to other files that hold its columns. Export it as one file.");

    public static FileFault Unknown(string name) => new(ReadingDiagnostics.UnreadableParquet,
        $"{name} cannot be read as a Parquet file: it is damaged or made in a way that is not known. {Anew}");

    public static FileFault Compression(string name) => new(ReadingDiagnostics.UnreadableParquet,
        $"{name} is compressed in a way that is not read. Write it uncompressed or with Snappy, gzip, Brotli, Zstandard or LZ4_RAW, or export it as CSV.");

    public static FileFault NoColumns(string name) => new(ReadingDiagnostics.NoRows, $"{name} has no columns. {Anew}");

    public static FileFault Suspicious(string name) => new(ReadingDiagnostics.SuspiciousArchive,
        $"{name} claims to hold more than {UnpackingRoom.MostTimes} times its length, which no export does. Nothing was read; check where it comes from, or export it as CSV.");

    public static FileFault GroupTooLarge(string name, long rows) => new(ReadingDiagnostics.UnreadableParquet,
        $"{name} has a row group of {FindingTexts.Figure(rows)} rows, which would take more than {ParquetFile.LargestGroup >> 30} GB of memory. Write it with row groups of a million rows, or export it as CSV.");

    public static FileFault RecordTooLong(string name, long record) => new(ReadingDiagnostics.RecordTooLong,
        $"In {name} record {FindingTexts.Figure(record)} is longer than 1 MiB. Look for text in the wrong column there.", record);

    public static FileFault NotUtf8(string name, string column, long record) => new(ReadingDiagnostics.UnreadableParquet,
        $"In {name} the column {column} holds text in record {FindingTexts.Figure(record)} that is not UTF-8, as text of Parquet is. {Anew}", record);

    public static FileFault Column(string name, string column, string why) => new(ReadingDiagnostics.UnsupportedColumn,
        $"In {name} the column {column} {why}.");

    public static Diagnostic LeftOut(string name, string column, string why) => new(ReadingDiagnostics.UnreadColumn, Severity.Warning, name, null, "",
        $"In {name} the column {column} {why}. Nothing is read from it, so it was left out.");
}
