using System.Globalization;
using System.IO.Compression;
using System.Text;
using System.Xml;
using System.Xml.Linq;
using ScreenStats.Counting.Diagnostics;
using ScreenStats.Counting.Ledger;
using ScreenStats.Counting.Programs;
using ScreenStats.Records.Deidentification.Pseudonyms;

namespace ScreenStats.Records.Tests.Formats;

/// <summary>
/// Good exports, changed at random, for every reader: never another exception than the one that says what is wrong, never
/// a lost row, never more memory than a small file needs. SCREENSTATS_MUTATIONS sets how many inputs each reader gets; the
/// usual run is short, the long one is started by hand:
/// <c>SCREENSTATS_MUTATIONS=20000 dotnet run --project tests/ScreenStats.Records.Tests -- -class '*MutatedExportTests*'</c>.
/// </summary>
public class MutatedExportTests
{
    private const int UsualInputs = 150;
    private const long MostAllocated = 48 << 20;

    private static readonly string[] Pieces =
        ["\"", ",", ";", "\t", "\n", "\r", "\r\n", "\0", "\u00a0", "ä", "person", "site", "collected_at", "result", "Total,,,\n", "5.1.26", "2026-01-05T08:00", "13/01/2026", "neg", "é", "sep=;\n", "<", ">", "</row>", "<row r=\"9\">", "<c r=\"B3\">", "<v>1e308</v>", "<v>-1</v>", "t=\"s\"", "s=\"99\"", "&#10;", "&lt;", "{", "}", "[", "]", ":", "\\u0000", "\\ud800", "null", "\"status\":\"final\",", "1e999", "\"Patient/\""];

    private static readonly string GoodRows = GoodText();
    private static readonly string Lines = GoodLines();
    private static readonly string Sheet = GoodSheet();

    private static int Inputs => int.TryParse(Environment.GetEnvironmentVariable("SCREENSTATS_MUTATIONS"), NumberStyles.None, CultureInfo.InvariantCulture, out var stated) ? stated : UsualInputs;

    [Fact]
    public void Rows_of_text() => Try("screening.csv", 1, random => Mutated(Encoding.UTF8.GetBytes(GoodRows), random), RowsOfText);

    [Fact]
    public void Rows_of_text_in_gzip() => Try("screening.csv.gz", 2, random => Gzip(Mutated(Encoding.UTF8.GetBytes(GoodRows), random)), null);

    [Fact]
    public void The_bytes_of_a_gzip_file() => Try("screening.csv.gz", 3, random => Mutated(Gzip(Encoding.UTF8.GetBytes(GoodRows)), random), null);

    [Fact]
    public void The_bytes_of_a_workbook() => Try("screening.xlsx", 4, random => Mutated(Workbook(Encoding.UTF8.GetBytes(Sheet)), random), null);

    [Fact]
    public void A_sheet_of_a_workbook()
    {
        byte[] sheet = [];
        Try("screening.xlsx", 5, random => Workbook(sheet = Mutated(Encoding.UTF8.GetBytes(Sheet), random)), (_, file) => RowsOfSheet(sheet, file.HeadingLine!.Value));
    }

    [Fact]
    public void Cells_of_a_workbook()
    {
        byte[] sheet = [];
        Try("screening.xlsx", 7, random => Workbook(sheet = Encoding.UTF8.GetBytes(ChangedSheet(random))), (_, file) => RowsOfSheet(sheet, file.HeadingLine!.Value));
    }

    [Fact]
    public void Elements_of_resources() => Try("confirmatory.ndjson", 8, random => Encoding.UTF8.GetBytes(ChangedLines(random)), (bytes, _) => RowsOfLines(bytes));

    [Fact]
    public void Lines_of_resources() => Try("confirmatory.ndjson", 6, random => Mutated(Encoding.UTF8.GetBytes(Lines), random), (bytes, _) => RowsOfLines(bytes));

    [Theory]
    [InlineData("log.csv", 11)]
    [InlineData("log.csv.gz", 12)]
    [InlineData("log.xlsx", 13)]
    [InlineData("log.ndjson", 14)]
    public void What_is_to_be_pseudonymized(string name, int seed)
    {
        using var folder = new Deidentification.Pseudonyms.PseudonymFolder();
        var source = Path.Combine(folder.Root, name);
        var target = Path.Combine(folder.Root, "out.csv");
        long written = 0;
        for (var input = 0; input < Inputs; input++)
        {
            var random = new Random((seed * 10_000_000) + input);
            File.WriteAllBytes(source, seed switch
            {
                11 => Mutated(Encoding.UTF8.GetBytes(GoodRows), random),
                12 => Gzip(Mutated(Encoding.UTF8.GetBytes(GoodRows), random)),
                13 => Workbook(Encoding.UTF8.GetBytes(ChangedSheet(random))),
                _ => Encoding.UTF8.GetBytes(ChangedLines(random)),
            });
            var before = GC.GetAllocatedBytesForCurrentThread();
            try
            {
                var result = Pseudonymizer.Write(new PseudonymizeRequest { Source = source, Target = target, KeyFile = folder.KeyFile, Columns = ["person"] }, cancellationToken: TestContext.Current.CancellationToken);
                written++;
                result.Columns.Single(column => column.Treatment == ColumnTreatment.Pseudonymized).Should().Match<PseudonymizedColumn>(column => column.Replaced + column.Blank == result.Rows, $"input {input}");
                File.Delete(target);
            }
            catch (Exception refusal) when (refusal is UnusableDataException or PseudonymizeException)
            {
                File.Exists(target).Should().BeFalse($"input {input}");
            }
            catch (Exception exception) when (exception is not Xunit.Sdk.XunitException)
            {
                throw new InvalidOperationException($"input {input} of {name}: {exception}", exception);
            }

            (GC.GetAllocatedBytesForCurrentThread() - before).Should().BeLessThan(MostAllocated, $"input {input}");
        }

        written.Should().BeGreaterThan(Inputs / 200, "else nothing but refusals is tested");
        TestContext.Current.TestOutputHelper?.WriteLine($"{name}, seed {seed}: {Inputs} inputs, {written} written, {Inputs - written} refused");
    }

    /// <summary>Reads as many changed inputs as are asked for.</summary>
    /// <param name="name">The file.</param>
    /// <param name="seed">Seed of this reader.</param>
    /// <param name="make">Makes an input.</param>
    /// <param name="least">Counts, in another way, the rows that must be there; null where nothing else can.</param>
    private static void Try(string name, int seed, Func<Random, byte[]> make, Func<byte[], FileUnderstanding, long?>? least)
    {
        using var folder = new TestFolder();
        if (name.StartsWith("confirmatory", StringComparison.Ordinal)) folder.With("screening.csv", "person,site,collected_at,result\np1,North,2026-01-05T08:00Z,pos\n");
        long read = 0;
        for (var input = 0; input < Inputs; input++)
        {
            var bytes = make(new Random((seed * 10_000_000) + input));
            folder.With(name, bytes);
            var before = GC.GetAllocatedBytesForCurrentThread();
            try
            {
                var reading = folder.Read(new ProgramSettings { TimeZone = "Europe/Vienna" }, new ReadOptions { Threads = 1 });
                read++;
                AddsUp(reading, bytes, least, name, $"input {input}");
            }
            catch (UnusableDataException refusal)
            {
                refusal.Diagnostics[0].Severity.Should().Be(Severity.Error, $"input {input}");
            }
            catch (Exception exception) when (exception is not Xunit.Sdk.XunitException)
            {
                throw new InvalidOperationException($"input {input} of {name}: {exception}", exception);
            }

            (GC.GetAllocatedBytesForCurrentThread() - before).Should().BeLessThan(MostAllocated, $"input {input}");
        }

        read.Should().BeGreaterThan(Inputs / 200, "else nothing but refusals is tested");
        TestContext.Current.TestOutputHelper?.WriteLine($"{name}, seed {seed}: {Inputs} inputs, {read} read, {Inputs - read} refused");
    }

    private static void AddsUp(ReadingResult reading, byte[] bytes, Func<byte[], FileUnderstanding, long?>? least, string name, string because)
    {
        foreach (var export in reading.Understanding)
        {
            var rows = export.Files.Sum(file => file.Rows);
            TestFolder.Rows(reading, export.Export).Should().Be(rows, because);
        }

        var removed = reading.Tally.Cells.Ledger.Where(cell => cell.Entry is LedgerEntry.SetAside or LedgerEntry.Duplicate).Sum(cell => cell.Rows);
        reading.SetAside.Should().HaveCount((int)removed, because);
        var file = reading.Understanding.SelectMany(export => export.Files).Single(file => file.Name == name);
        if (least?.Invoke(bytes, file) is { } counted) file.Rows.Should().Be(counted, because);
    }

    /// <summary>Lines behind the headings that are not empty; null where quotes make lines no rows, or other encodings are at work.</summary>
    private static long? RowsOfText(byte[] bytes, FileUnderstanding file)
    {
        if (file.Encoding != "UTF-8" || bytes.Contains((byte)'"')) return null;
        return Encoding.Latin1.GetString(bytes).Replace("\r\n", "\n", StringComparison.Ordinal).Replace('\r', '\n').Split('\n')
            .Skip((int)file.HeadingLine!.Value).LongCount(line => line.Length > 0);
    }

    private static long? RowsOfLines(byte[] bytes) => Encoding.Latin1.GetString(bytes).Split('\n').LongCount(line => line.Trim(' ', '\t', '\r').Length > 0);

    /// <summary>Rows of the sheet below the headings with a cell that holds anything.</summary>
    private static long? RowsOfSheet(byte[] sheet, long headings)
    {
        XDocument document;
        try
        {
            document = XDocument.Parse(Encoding.UTF8.GetString(sheet), LoadOptions.PreserveWhitespace);
        }
        catch (XmlException)
        {
            return null;
        }

        XNamespace main = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
        var rows = document.Root!.Element(main + "sheetData")?.Elements(main + "row").ToList();
        if (rows is null || rows.Exists(row => row.Attribute("r") is null)) return null;
        // What the standard does not foresee inside a cell is not counted here: the ledger still has to add up.
        if (rows.Exists(row => row.Elements(main + "c").Any(cell => cell.Nodes().Any(node => node is not XElement) || cell.Elements().Any(inner => inner.Name != main + "v" && inner.Name != main + "is"))
            || row.Nodes().Any(node => node is not XElement) || row.Elements().Any(cell => cell.Name != main + "c"))) return null;
        return rows.Where(row => long.Parse(row.Attribute("r")!.Value, NumberStyles.None, CultureInfo.InvariantCulture) > headings)
            .LongCount(row => row.Elements(main + "c").Any(cell => cell.Attribute("t")?.Value == "e" || cell.Descendants().Any(inner => (inner.Name == main + "v" || inner.Name == main + "t") && inner.Value.Length > 0)));
    }

    private static byte[] Mutated(byte[] good, Random random)
    {
        var bytes = good.ToList();
        for (var change = random.Next(1, 6); change > 0 && bytes.Count > 0; change--)
        {
            var at = random.Next(bytes.Count);
            var length = Math.Min(bytes.Count - at, random.Next(1, random.Next(2, 60)));
            switch (random.Next(7))
            {
                case 0:
                    bytes[at] = (byte)random.Next(256);
                    break;
                case 1:
                    bytes[at] ^= (byte)(1 << random.Next(8));
                    break;
                case 2:
                    bytes.RemoveRange(at, length);
                    break;
                case 3:
                    bytes.InsertRange(at, bytes.GetRange(random.Next(bytes.Count - length + 1), length));
                    break;
                case 4:
                    bytes.InsertRange(at, Encoding.UTF8.GetBytes(Pieces[random.Next(Pieces.Length)]));
                    break;
                case 5:
                    bytes.RemoveRange(at, length);
                    bytes.InsertRange(Math.Min(at, bytes.Count), Encoding.UTF8.GetBytes(Pieces[random.Next(Pieces.Length)]));
                    break;
                default:
                    if (random.Next(4) == 0) bytes.RemoveRange(at, bytes.Count - at);
                    break;
            }
        }

        return [.. bytes];
    }

    /// <summary>A sheet that stays XML, whose cells are of any kind, with gaps, errors, formulas and merged cells.</summary>
    private static string ChangedSheet(Random random)
    {
        string[] values = ["p1", "p2", "North", "neg", "pos", "2026-01-05T08:00", "13/01/2026", "46027", "46027.35", "1e308", "-5", "0", "1", "Total", "", " ", "a&#10;b", "a,b", "&quot;x", "Ada Example", "2958465.99999", "60", "NaN", "000"];
        string Value() => values[random.Next(values.Length)];
        string Cell(string place) => random.Next(12) switch
        {
            0 => "",
            1 => $"<c r=\"{place}\" s=\"{random.Next(4)}\"><v>{random.Next(70_000)}.{random.Next(1000)}</v></c>",
            2 => $"<c r=\"{place}\" t=\"s\"><v>{random.Next(2)}</v></c>",
            3 => $"<c r=\"{place}\" t=\"e\"><v>#N/A</v></c>",
            4 => $"<c r=\"{place}\" t=\"b\"><v>{random.Next(2)}</v></c>",
            5 => $"<c r=\"{place}\" t=\"str\"><v>{Value()}</v></c>",
            6 => $"<c r=\"{place}\"><v>{Value()}</v></c>",
            7 => $"<c r=\"{place}\" t=\"{(random.Next(2) == 0 ? "d" : "n")}\" s=\"1\"><v>{Value()}</v></c>",
            _ => $"<c r=\"{place}\" t=\"inlineStr\"><is><t xml:space=\"preserve\">{Value()}</t></is></c>",
        };
        var rows = new StringBuilder();
        var number = 0;
        var heading = random.Next(4);
        for (var row = 0; row < 14; row++)
        {
            number += random.Next(10) == 0 ? random.Next(1, 2000) : 1;
            if (row == heading) rows.Append(WorkbookParts.Row(number, "person", "site", "collected_at", "result", random.Next(2) == 0 ? "lot" : "person "));
            else if (row > heading && random.Next(3) > 0) rows.Append(WorkbookParts.Row(number, "p" + row, "North", "2026-01-05T08:00", "neg"));
            else if (random.Next(4) == 0) rows.Append(CultureInfo.InvariantCulture, $"<row r=\"{number}\"><c r=\"B{number}\" t=\"e\"><v>#REF!</v></c></row>");
            else rows.Append(CultureInfo.InvariantCulture, $"<row r=\"{number}\">{string.Concat(Enumerable.Range(0, 6).Select(column => Cell($"{(char)('A' + column)}{number}")))}</row>");
        }

        return WorkbookParts.Sheet(rows.ToString(), after: random.Next(5) == 0 ? $"<mergeCells><mergeCell ref=\"A{random.Next(1, 30)}:B{random.Next(30, 40)}\"/></mergeCells>" : "");
    }

    /// <summary>Resources that stay JSON, with elements of any type in any place.</summary>
    private static string ChangedLines(Random random)
    {
        string[] keys = ["resourceType", "status", "subject", "reference", "effectiveDateTime", "issued", "valueCodeableConcept", "valueString", "interpretation", "coding", "code", "system", "text", "method", "identifier", "value", "modifierExtension", "implicitRules"];
        string[] leaves = ["\"Observation\"", "\"final\"", "\"Patient/p1\"", "\"2026-01-05T09:00:00Z\"", "\"positive\"", "\"http://snomed.info/sct\"", "\"260373001\"", "\"\"", "\"a\\nb\"", "\"\\ud83d\\ude00\"", "\"\\ud83d\"", "null", "true", "0", "-1e400", "[]", "{}", "[null]", "[[]]"];
        string Any(int depth) => depth == 0 || random.Next(3) == 0 ? leaves[random.Next(leaves.Length)]
            : random.Next(3) == 0 ? $"[{string.Join(",", Enumerable.Range(0, random.Next(3)).Select(_ => Any(depth - 1)))}]"
            : $"{{{string.Join(",", keys.Where(_ => random.Next(6) == 0).Select(key => $"\"{key}\":{Any(depth - 1)}"))}}}";
        string One(int row)
        {
            var parts = new Dictionary<string, string>(StringComparer.Ordinal)
            {
                ["resourceType"] = "\"Observation\"", ["status"] = "\"final\"", ["subject"] = $"{{\"reference\":\"Patient/p{row}\"}}", ["effectiveDateTime"] = "\"2026-01-05T09:00:00Z\"",
                ["valueCodeableConcept"] = "{\"coding\":[{\"system\":\"http://snomed.info/sct\",\"code\":\"260373001\"}]}",
            };
            for (var change = random.Next(4); change > 0; change--) parts[keys[random.Next(keys.Length)]] = Any(4);
            return $"{{{string.Join(",", parts.Select(part => $"\"{part.Key}\":{part.Value}"))}}}";
        }

        return string.Concat(Enumerable.Range(0, 10).Select(row => (random.Next(12) == 0 ? Any(5) : One(row)) + (random.Next(8) == 0 ? "\n \r\n" : "\n")));
    }

    private static string GoodText()
    {
        var text = new StringBuilder("Screening log\n\nscreen_id,person,site,collected_at,result,lot,symptomatic\n");
        for (var row = 0; row < 25; row++)
        {
            text.Append(CultureInfo.InvariantCulture, $"s{(row == 20 ? 19 : row)},p{row % 7},{(row % 5 == 1 ? "Nörd" : row % 5 == 2 ? "South gate" : "East")},2026-01-{5 + (row % 20):00}T08:{row:00},{(row % 6 == 4 ? "pos" : "neg")},L{row % 3},{(row % 9 == 8 ? "yes" : "")}\n");
            if (row == 12) text.Append('\n');
        }

        return text.Append("Total,,,,25,,\n").ToString();
    }

    private static string GoodLines() => string.Concat(Enumerable.Range(0, 12).Select(row =>
        $"{{\"resourceType\":\"Observation\",\"id\":\"o{row}\",\"status\":\"{(row == 5 ? "entered-in-error" : "final")}\",\"subject\":{{\"reference\":\"Patient/p{row % 5}\"}},\"effectiveDateTime\":\"2026-01-{5 + row:00}T09:00:00+01:00\",\"issued\":\"2026-01-{6 + row:00}T09:00:00.000+01:00\","
        + "\"valueCodeableConcept\":{\"coding\":[{\"system\":\"http://snomed.info/sct\",\"code\":\"260373001\"}]},\"interpretation\":[{\"coding\":[{\"system\":\"http://terminology.hl7.org/CodeSystem/v3-ObservationInterpretation\",\"code\":\"POS\"}]}]}\n"));

    private static string GoodSheet() => WorkbookParts.Sheet(
        WorkbookParts.Row(1, "Log") + WorkbookParts.Row(3, "person", "site", "collected_at", "result")
        + string.Concat(Enumerable.Range(4, 12).Select(row => row % 4 == 0
            ? $"<row r=\"{row}\"><c r=\"A{row}\"><v>{row}</v></c><c r=\"B{row}\" t=\"s\"><v>0</v></c><c r=\"C{row}\"><v>{46020 + row}.5</v></c><c r=\"D{row}\" t=\"s\"><v>1</v></c></row>"
            : WorkbookParts.Row(row, "p" + row, "South", "2026-01-05T08:00", row % 5 == 0 ? "pos" : "neg"))));

    private static byte[] Workbook(byte[] sheet) => WorkbookParts.Zip(
        [.. WorkbookParts.Frame(true).Select(part => (part.Name, Encoding.UTF8.GetBytes(part.Text))), ("xl/sharedStrings.xml", Encoding.UTF8.GetBytes(WorkbookParts.SharedTexts("<si><t>North</t></si><si><t>neg</t></si>"))), ("xl/worksheets/sheet1.xml", sheet)]);

    private static byte[] Gzip(byte[] bytes)
    {
        using var packed = new MemoryStream();
        using (var gzip = new GZipStream(packed, CompressionLevel.Fastest)) gzip.Write(bytes);
        return packed.ToArray();
    }
}
