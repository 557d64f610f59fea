using System.Globalization;
using System.IO.Compression;
using System.Xml;
using ScreenStats.Counting.Diagnostics;

namespace ScreenStats.Records.Formats.Converting;

/// <summary>
/// Looks through a workbook before it is read: how much its parts unpack to, and whether every row and cell is within what
/// a sheet can hold. Behind it a reader needs no more memory than a sheet's row and the shared texts, and no row can vanish
/// because another stands in its place.
/// </summary>
internal sealed class WorkbookBounds
{
    /// <summary>Bytes of one sheet, unpacked.</summary>
    public const long LargestSheet = 1L << 30;

    /// <summary>Bytes of any other part, unpacked: the shared texts are held in memory.</summary>
    public const long LargestOther = 128L << 20;

    /// <summary>Bytes that may come out of a part whatever went in.</summary>
    public const long AlwaysAllowed = 32L << 20;

    /// <summary>How many times as long as it is packed a part may be beyond that; sheets are 5 to 40 times as long.</summary>
    public const int MostTimes = 200;

    public const int MostRows = 1_048_576;
    public const int MostColumns = 16_384;
    private const int MostSheets = 256;
    private const int MostEntries = 10_000;
    private const int MostOthers = 200_000;
    private readonly string name;
    private readonly Action tick;
    private readonly List<string> identifiers = [];
    private readonly Dictionary<string, string> targets = new(StringComparer.Ordinal);
    private readonly Dictionary<string, ErrorCells> errors = new(StringComparer.OrdinalIgnoreCase);
    private long sharedTexts;
    private long largestIndex = -1;

    private WorkbookBounds(string name, Action tick)
    {
        this.name = name;
        this.tick = tick;
    }

    /// <summary>True where days are counted from 1904.</summary>
    public bool Date1904 { get; private set; }

    /// <summary>The cells of a sheet that hold an error, or a formula without a value.</summary>
    /// <param name="sheet">Position of the sheet in the workbook.</param>
    public ErrorCells Errors(int sheet) =>
        sheet < identifiers.Count && targets.TryGetValue(identifiers[sheet], out var target) && errors.TryGetValue(target, out var found) ? found : new ErrorCells();

    /// <summary>Looks through a workbook.</summary>
    /// <exception cref="FileFault">It is no workbook, or is more than may be read.</exception>
    public static WorkbookBounds Check(Stream workbook, string name, Action tick)
    {
        var bounds = new WorkbookBounds(name, tick);
        try
        {
            using var archive = new ZipArchive(workbook, ZipArchiveMode.Read, leaveOpen: true);
            bounds.Look(archive);
        }
        catch (Exception exception) when (exception is InvalidDataException or XmlException or EndOfStreamException or NotSupportedException or ArgumentException or OverflowException or IOException)
        {
            throw new FileFault(ReadingDiagnostics.UnreadableWorkbook, $"{name} cannot be read as a workbook: it is damaged or made in a way that is not known. Open it in a spreadsheet program and save it anew as .xlsx, or export it as CSV.");
        }

        return bounds;
    }

    private void Look(ZipArchive archive)
    {
        if (archive.Entries.Count > MostEntries) throw Hostile("it has thousands of parts");
        if (archive.Entries.Any(Binary))
            throw new FileFault(ReadingDiagnostics.UnreadableWorkbook, $"{name} is a binary workbook. Save it as .xlsx, or export it as CSV.");
        if (archive.Entries.Select(entry => entry.FullName.TrimStart('/')).Distinct(StringComparer.OrdinalIgnoreCase).Count() != archive.Entries.Count)
            throw Hostile("it has two parts of the same name");
        // What the parts say of their length costs nothing to know; that they do not lie is seen while unpacking.
        if (archive.Entries.Sum(entry => entry.Length) > 2 * LargestSheet) throw TooLarge();
        Span<byte> first = stackalloc byte[4];
        foreach (var entry in archive.Entries)
        {
            if (entry.Length == 0) continue;
            if (entry.Length > AlwaysAllowed + (MostTimes * entry.CompressedLength)) throw TooLarge();
            using var head = entry.Open();
            var length = head.ReadAtLeast(first, 4, throwOnEndOfStream: false);
            if (first[..length].Contains((byte)'<') || first[..length].Contains((byte)0xEF) || first[..length].ContainsAny([(byte)0xFE, (byte)' ', (byte)'\n', (byte)'\r'])) Part(entry);
        }

        if (largestIndex >= sharedTexts) throw Hostile("a cell refers to a text that is not there");
    }

    private static bool Binary(ZipArchiveEntry entry) => entry.FullName.EndsWith(".bin", StringComparison.OrdinalIgnoreCase)
        && (entry.Name.StartsWith("workbook", StringComparison.OrdinalIgnoreCase) || entry.Name.StartsWith("sheet", StringComparison.OrdinalIgnoreCase));

    private void Part(ZipArchiveEntry entry)
    {
        var most = Math.Min(LargestSheet, AlwaysAllowed + (MostTimes * entry.CompressedLength));
        var settings = new XmlReaderSettings { DtdProcessing = DtdProcessing.Prohibit, XmlResolver = null, IgnoreWhitespace = true };
        string? root;
        // Only the root's name is looked at here, within the first million characters: what holds no cells may hold comments.
        using (var glance = XmlReader.Create(entry.Open(), new XmlReaderSettings { DtdProcessing = DtdProcessing.Prohibit, XmlResolver = null, IgnoreComments = true, MaxCharactersInDocument = 1 << 20 }))
        {
            root = glance.MoveToContent() == XmlNodeType.Element ? glance.LocalName : null;
        }

        if (root is not ("worksheet" or "sst" or "workbook" or "styleSheet" or "Relationships")) return;
        if (root != "worksheet") most = Math.Min(most, LargestOther);
        using var reader = XmlReader.Create(new ScannedStream(entry.Open(), name, most, tick), settings);
        switch (root)
        {
            case "worksheet":
                errors[entry.FullName.TrimStart('/')] = Sheet(reader);
                break;
            case "workbook":
                Workbook(reader);
                break;
            case "Relationships":
                Relationships(reader, entry.FullName.EndsWith("workbook.xml.rels", StringComparison.OrdinalIgnoreCase));
                break;
            case "sst":
                while (reader.Read())
                {
                    if (reader.NodeType == XmlNodeType.Element && reader.LocalName == "si") sharedTexts++;
                }

                break;
            default:
                while (reader.Read())
                {
                }

                break;
        }
    }

    private void Workbook(XmlReader reader)
    {
        while (reader.Read())
        {
            if (reader.NodeType != XmlNodeType.Element) continue;
            if (reader.LocalName == "workbookPr") Date1904 |= reader.GetAttribute("date1904") is "1" or "true";
            if (reader.LocalName != "sheet") continue;
            var identifier = "";
            while (reader.MoveToNextAttribute())
            {
                if (reader.LocalName == "id" && reader.Prefix.Length > 0) identifier = reader.Value;
            }

            if (identifiers.Contains(identifier) || identifiers.Count == MostSheets) throw Hostile("it has hundreds of sheets, or one sheet twice");
            identifiers.Add(identifier);
        }
    }

    private void Relationships(XmlReader reader, bool ofWorkbook)
    {
        var sheets = new HashSet<string>(StringComparer.OrdinalIgnoreCase);
        while (reader.Read())
        {
            if (reader.NodeType != XmlNodeType.Element || reader.LocalName != "Relationship") continue;
            if (reader.GetAttribute("Type") is not { } type || !type.EndsWith("/worksheet", StringComparison.Ordinal)) continue;
            var target = reader.GetAttribute("Target") ?? "";
            if (!sheets.Add(target) || sheets.Count > MostSheets) throw Hostile("it has hundreds of sheets, or one sheet twice");
            if (ofWorkbook) targets[reader.GetAttribute("Id") ?? ""] = target.StartsWith('/') ? target[1..] : "xl/" + target;
        }
    }

    private ErrorCells Sheet(XmlReader reader)
    {
        var found = new ErrorCells();
        var formula = false;
        var row = 0;
        var column = 0;
        var others = 0;
        var shared = false;
        var texts = false;
        while (reader.Read())
        {
            if (reader.NodeType == XmlNodeType.Text && shared && texts)
            {
                if (!int.TryParse(reader.Value, NumberStyles.None, CultureInfo.InvariantCulture, out var index)) throw Hostile("a cell refers to a text that is not there");
                largestIndex = Math.Max(largestIndex, index);
                continue;
            }

            if (reader.NodeType == XmlNodeType.EndElement && reader.LocalName == "c" && formula) found.Add(row);
            if (reader.NodeType != XmlNodeType.Element) continue;
            texts = false;
            switch (reader.LocalName)
            {
                case "row":
                    row = reader.GetAttribute("r") is { } text ? Number(text, row + 1, MostRows) : row + 1;
                    if (row > MostRows) throw Hostile("a row lies outside of a sheet");
                    column = 0;
                    break;
                case "c":
                    column = reader.GetAttribute("r") is { } place ? Column(place, row, column) : column + 1;
                    if (column > MostColumns) throw Hostile("a cell lies outside of a sheet");
                    shared = reader.GetAttribute("t") == "s";
                    formula = false;
                    if (reader.GetAttribute("t") == "e") found.Add(row);
                    break;
                case "v":
                    texts = true;
                    formula = false;
                    break;
                case "f":
                    formula = true;
                    break;
                case "is" or "t" or "r" or "rPr":
                    break;
                default:
                    if (++others > MostOthers) throw Hostile("a sheet holds too much beside its cells");
                    break;
            }
        }

        return found;
    }

    private int Number(string text, int least, int most)
    {
        if (!int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var number) || number < least || number > most)
            throw Hostile("its rows are not in order, or lie outside of a sheet");
        return number;
    }

    /// <summary>The column of a place such as B7, counted from 1; places come from left to right in their row.</summary>
    private int Column(string place, int row, int before)
    {
        var column = 0;
        var at = 0;
        for (; at < place.Length && at < 4 && char.IsAsciiLetterUpper(place[at]); at++) column = (column * 26) + place[at] - 'A' + 1;
        if (column <= before || column > MostColumns) throw Hostile("its cells are not in order, or lie outside of a sheet");
        Number(place[at..], row, row);
        return column;
    }

    private FileFault TooLarge() => new(ReadingDiagnostics.SuspiciousArchive,
        $"{name} unpacks to far more than any workbook of exports. Nothing was read; check where it comes from, or export it as CSV.");

    private FileFault Hostile(string what) => new(ReadingDiagnostics.UnreadableWorkbook,
        $"{name} cannot be read as a workbook: {what}. Open it in a spreadsheet program and save it anew as .xlsx, or export it as CSV.");
}
