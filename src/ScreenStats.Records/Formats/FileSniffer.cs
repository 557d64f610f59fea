using System.Text;
using System.Text.Unicode;
using ScreenStats.Counting.Diagnostics;
using ScreenStats.Records.Understanding;
using ScreenStats.Records.Validation;

namespace ScreenStats.Records.Formats;

/// <summary>Looks at the beginning of a file: encoding, delimiter, headings.</summary>
internal static class FileSniffer
{
    private static readonly byte[] Delimiters = [(byte)',', (byte)';', (byte)'\t', (byte)'|'];

    /// <summary>The form of what is read for a file: known where it was made here with its headings, else found out; null with a diagnostic.</summary>
    /// <param name="part">What is read.</param>
    /// <param name="name">The file's name, for messages.</param>
    /// <param name="forced">An encoding already known from reading all of it.</param>
    /// <param name="made">True for text that was made here from a file of another format.</param>
    /// <param name="search">Finds the headings; those that mean something are the evidence for a delimiter.</param>
    /// <param name="diagnostics">Takes what is wrong.</param>
    public static FileShape? Of(FilePart part, string name, TextEncoding? forced, bool made, HeadingSearch search, List<Diagnostic> diagnostics)
    {
        if (part.Shape is null) return Sniff(part.Path, name, forced, made, search, diagnostics);
        Rows(part.Shape, name, diagnostics);
        return part.Shape;
    }

    /// <summary>The form of a file, or null with a diagnostic.</summary>
    /// <param name="path">The file.</param>
    /// <param name="name">Its name, for messages.</param>
    /// <param name="forced">An encoding already known from reading all of it.</param>
    /// <param name="made">True for text that was made here from a file of another format.</param>
    /// <param name="search">Finds the headings; those that mean something are the evidence for a delimiter.</param>
    /// <param name="diagnostics">Takes what is wrong.</param>
    public static FileShape? Sniff(string path, string name, TextEncoding? forced, bool made, HeadingSearch search, List<Diagnostic> diagnostics)
    {
        byte[] head;
        long length;
        bool whole;
        if (!OrdinaryFile.HoldsBytes(path))
        {
            diagnostics.Add(Error(ReadingDiagnostics.EmptyFile, name, null, Empty(name)));
            return null;
        }

        try
        {
            using var stream = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.Read);
            length = stream.Length;
            head = new byte[Math.Min(length, BlockReader.LongestRecord + 65_536)];
            stream.ReadExactly(head);
            whole = head.Length == length;
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException)
        {
            diagnostics.Add(Error(ReadingDiagnostics.UnreadableFile, name, null,
                $"{name} cannot be opened. Check that you may read it and that no other program holds it."));
            return null;
        }

        if (EncodingOf(head, name, forced, whole, diagnostics) is not { } encoding) return null;
        var text = encoding.IsUtf8() ? head[encoding.MarkLength()..] : Encoding.UTF8.GetBytes(encoding.Decoder().GetString(head, encoding.MarkLength(), head.Length - encoding.MarkLength()));
        if (text.AsSpan().IndexOfAnyExcept(" \t\r\n"u8) < 0)
        {
            diagnostics.Add(Error(ReadingDiagnostics.EmptyFile, name, null, Empty(name)));
            return null;
        }

        return Shape(text, name, encoding, length, whole, made, search, diagnostics);
    }

    private static TextEncoding? EncodingOf(byte[] head, string name, TextEncoding? forced, bool whole, List<Diagnostic> diagnostics)
    {
        if (forced is { } known) return known;
        if (head.AsSpan().StartsWith<byte>([0xEF, 0xBB, 0xBF])) return TextEncoding.Utf8WithMark;
        var wide = head.Length >= 4 && ((head[0] == 0xFF && head[1] == 0xFE && head[2] == 0 && head[3] == 0) || (head[0] == 0 && head[1] == 0 && head[2] == 0xFE && head[3] == 0xFF));
        if (!wide && head.Length >= 2 && head[0] == 0xFF && head[1] == 0xFE) return TextEncoding.Utf16LittleEndian;
        if (!wide && head.Length >= 2 && head[0] == 0xFE && head[1] == 0xFF) return TextEncoding.Utf16BigEndian;
        if (wide || Binary(head))
        {
            var looks = head.AsSpan().StartsWith("PK"u8) ? " It looks like a workbook: if it is one, name it .xlsx."
                : head.AsSpan().StartsWith<byte>([0xD0, 0xCF, 0x11, 0xE0]) ? " It looks like a workbook of the old format: save it as .xlsx."
                : head.AsSpan().StartsWith<byte>([0x1F, 0x8B]) ? " It looks like a gzip file: if it is one, let its name end in .gz."
                : head.AsSpan().StartsWith("PAR1"u8) ? " It looks like a Parquet file: if it is one, let its name end in .parquet." : "";
            diagnostics.Add(Error(ReadingDiagnostics.NotText, name, null,
                $"{name} is not text: it holds bytes that no CSV file has.{looks} {(looks.Length > 0 ? "Or export" : "Export")} it as CSV in UTF-8."));
            return null;
        }

        var end = whole ? head.Length : head.AsSpan().LastIndexOf((byte)'\n') + 1;
        return Utf8.IsValid(head.AsSpan(0, end)) ? TextEncoding.Utf8 : TextEncoding.Windows1252;
    }

    private static bool Binary(byte[] head)
    {
        foreach (var b in head)
        {
            if (b < 0x20 && b is not ((byte)'\t' or (byte)'\r' or (byte)'\n' or 0x0B or 0x0C or 0x1A or 0x1B)) return true;
        }

        return false;
    }

    private static FileShape? Shape(
        byte[] text, string name, TextEncoding encoding, long length, bool whole, bool made, HeadingSearch search, List<Diagnostic> diagnostics)
    {
        var (stated, from) = made ? ((byte)',', 0) : Stated(text);
        FileShape? best = null;
        var bestScore = (-1, -1, -1);
        var anyBroken = false;
        foreach (var delimiter in stated is { } only ? [only] : Delimiters)
        {
            using var splitter = new RecordSplitter(delimiter);
            splitter.Load(text, 0, text.Length);
            for (var skip = 0; skip < from; skip++) splitter.Next();
            if (!splitter.Next()) continue;
            if (splitter.RecordEnd - splitter.RecordStart > BlockReader.LongestRecord || (!whole && splitter.RecordEnd == text.Length)) continue;
            if (splitter.Fault.Spans)
            {
                anyBroken = true;
                continue;
            }

            var records = new List<(IReadOnlyList<string> Fields, int Line)> { (Fields(splitter), splitter.LineBreaksBefore + 1) };
            var cut = false;
            while (records.Count <= HeadingSearch.Farthest && splitter.Next())
            {
                // The headings are skipped within the first block, and a record cut off at the end of what was read is none.
                if (splitter.Fault.Spans || splitter.RecordEnd > BlockReader.UsualLength / 2 || (!whole && splitter.RecordEnd == text.Length))
                {
                    cut = true;
                    break;
                }

                records.Add((Fields(splitter), splitter.LineBreaksBefore + 1));
            }

            var at = search.Find([.. records.Take(HeadingSearch.Farthest).Select(record => record.Fields)]);
            var headings = records[at].Fields;
            var same = records.Skip(at + 1).Count(record => record.Fields.Count == headings.Count);
            var score = (search.Recognised(headings), headings.Count > 1 ? same : 0, headings.Count);
            if (score.CompareTo(bestScore) <= 0) continue;
            bestScore = score;
            best = new FileShape(encoding, delimiter, headings, records[at].Line, from + at + 1, at, at + 1 < records.Count || cut, length);
        }

        // Headings that mean nothing under one delimiter are no headings where those under another break off in a quote.
        if (best is null || (anyBroken && bestScore.Item1 == 0))
        {
            var quote = text.AsSpan(0, Math.Min(text.Length, BlockReader.LongestRecord)).IndexOf((byte)'"');
            var firstLine = text.AsSpan().IndexOf((byte)'\n');
            var unclosed = quote >= 0 && (firstLine < 0 || quote < firstLine);
            var line = unclosed ? text.AsSpan(0, quote).Count((byte)'\n') + 1 : 1;
            diagnostics.Add(unclosed
                ? Error(ReadingDiagnostics.UnclosedQuote, name, line, UnclosedQuote(name, line))
                : Error(ReadingDiagnostics.RecordTooLong, name, line, TooLong(name, line)));
            return null;
        }

        Rows(best, name, diagnostics);
        return best;
    }

    /// <summary>Says so where nothing follows the headings.</summary>
    private static void Rows(FileShape shape, string name, List<Diagnostic> diagnostics)
    {
        if (!shape.HasRows) diagnostics.Add(Error(ReadingDiagnostics.NoRows, name, shape.HeadingLine > 0 ? shape.HeadingLine : null, $"{name} has headings but no rows. Export it again, with its rows."));
    }

    private static List<string> Fields(RecordSplitter splitter)
    {
        var fields = new List<string>(splitter.FieldCount);
        for (var f = 0; f < splitter.FieldCount; f++) fields.Add(Encoding.UTF8.GetString(splitter.Field(f)).Trim());
        return fields;
    }

    public static string Empty(string name) => $"{name} is empty, or is a pipe or a device, which cannot be read twice. Export it again, into a file.";

    public static string UnclosedQuote(string name, long line) =>
        $"In {name} a quote opens on line {line} and is not closed where its field ends, so the rows behind it cannot be told apart. Close or remove that quote.";

    public static UnusableDataException TooManyRows(string name, uint most) => new(new Diagnostic(ReadingDiagnostics.TooManyRows, Severity.Error, name, null, "",
        $"Up to {name} the export has more than {FindingTexts.Figure(most)} rows, which is as many as can be told apart. Split it by sites or by time, and evaluate the parts."));

    public static string TooLong(string name, long line) =>
        $"In {name} the record that starts on line {line} is longer than 1 MiB. Check the line ends and the quotes there; a line ends with LF or CR LF.";

    /// <summary>A first line such as <c>sep=;</c>, which spreadsheets write and read.</summary>
    private static (byte? Delimiter, int Records) Stated(byte[] text)
    {
        if (text.Length < 5 || !text.AsSpan(0, 4).SequenceEqual("sep="u8)) return (null, 0);
        var end = text.AsSpan().IndexOfAny((byte)'\r', (byte)'\n');
        return end == 5 && Delimiters.Contains(text[4]) ? (text[4], 1) : (null, 0);
    }

    private static Diagnostic Error(string code, string file, long? line, string message) => new(code, Severity.Error, file, line, "", message);
}
