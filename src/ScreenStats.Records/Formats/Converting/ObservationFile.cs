using System.Text.Unicode;
using ScreenStats.Counting.Diagnostics;
using ScreenStats.Records.Understanding;

namespace ScreenStats.Records.Formats.Converting;

/// <summary>
/// Turns newline-delimited FHIR R4 Observation resources into CSV: one record a line, in the order of the file, and where a
/// line is not to be read the reason in a field of its own. The few elements that matter are read with System.Text.Json;
/// a library with the whole standard makes the runner 9 MB larger and the first resource half a second later.
/// </summary>
internal static class ObservationFile
{
    /// <summary>The elements that are read, as headings of the fields.</summary>
    public static readonly string[] Elements = ["subject", "effective[x]", "value[x], interpretation", "issued", "method", "status"];

    /// <summary>The field that holds why a line is not to be read.</summary>
    public const int AsideField = 5;

    /// <summary>The canonical columns that the fields are.</summary>
    public static readonly string[] Columns =
        [CanonicalColumns.Person, CanonicalColumns.CollectedAt, CanonicalColumns.Result, CanonicalColumns.ReportedAt, CanonicalColumns.Method];

    /// <summary>Turns a file into CSV.</summary>
    /// <exception cref="FileFault">A line is longer than a record may be, or the file is no text.</exception>
    public static LineMap Convert(Stream lines, string name, FileStream to, bool headed, UnpackingRoom room, Action tick)
    {
        using var writer = new CsvFileWriter(to, bytes => room.Take(bytes, name));
        // The line before the first: what is said of it has no place in the file.
        if (headed) writer.Write(0, [.. Columns, ""], least: Elements.Length);
        var buffer = new byte[BlockReader.LongestRecord + 2];
        var length = 0;
        long line = 1;
        var first = true;
        while (true)
        {
            var read = lines.ReadAtLeast(buffer.AsSpan(length), buffer.Length - length, throwOnEndOfStream: false);
            tick();
            length += read;
            var ended = length < buffer.Length;
            var from = first && buffer.AsSpan(0, length).StartsWith<byte>([0xEF, 0xBB, 0xBF]) ? 3 : 0;
            if (first && length > 1 && buffer[0] is 0xFE or 0xFF) throw new FileFault(ReadingDiagnostics.NotText, $"{name} is not written in UTF-8, as newline-delimited JSON is. Export it in UTF-8.");
            first = false;
            while (from < length)
            {
                var end = buffer.AsSpan(from, length - from).IndexOf((byte)'\n');
                if (end < 0 && !ended) break;
                var text = end < 0 ? buffer.AsSpan(from, length - from) : buffer.AsSpan(from, end);
                if (text.Length > BlockReader.LongestRecord) throw TooLong(name, line);
                Line(writer, text.Trim(" \t\r"u8), line++);
                from = end < 0 ? length : from + end + 1;
            }

            length -= from;
            if (length > BlockReader.LongestRecord && from == 0) throw TooLong(name, line);
            buffer.AsSpan(from, length).CopyTo(buffer);
            if (ended) break;
        }

        return writer.Lines;
    }

    private static FileFault TooLong(string name, long line) =>
        new(ReadingDiagnostics.RecordTooLong, $"In {name} line {Validation.FindingTexts.Figure(line)} is longer than 1 MiB. Each line holds one resource; check the line ends there.", line);

    private static void Line(CsvFileWriter writer, ReadOnlySpan<byte> text, long line)
    {
        if (text.IsEmpty) return;
        var fields = new string?[Elements.Length];
        fields[AsideField] = Utf8.IsValid(text) ? ObservationLine.Read(text.ToArray(), fields) : ObservationLine.Malformed;
        if (fields[AsideField] is not null) Array.Clear(fields, 0, AsideField);
        writer.Write(line, fields, least: Elements.Length);
    }
}
