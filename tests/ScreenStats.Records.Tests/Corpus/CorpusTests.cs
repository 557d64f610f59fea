using System.Globalization;
using System.Text.Encodings.Web;
using System.Text.Json;
using ScreenStats.Counting.Diagnostics;
using ScreenStats.Counting.Programs;
using ScreenStats.Testing;

namespace ScreenStats.Records.Tests.Corpus;

/// <summary>
/// Small exports, one oddity each: a folder with the files of a program and expected.json. What it says of an export that
/// is read: ledger, findings, setAside and outcomes always; files, sites, days, followUp and firstLines where they matter. What is not
/// to be read says why (refused).
/// </summary>
public class CorpusTests
{
    private static readonly JsonSerializerOptions Indented = new() { WriteIndented = true, Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    private static string Folder => RepositoryRoot.Combine("tests", "ScreenStats.Records.Tests", "Corpus");

    public static TheoryData<string> Cases =>
        [.. Directory.EnumerateFiles(Folder, "expected.json", SearchOption.AllDirectories).Select(file => Path.GetFileName(Path.GetDirectoryName(file)!)).Order(StringComparer.Ordinal)];

    [Theory]
    [MemberData(nameof(Cases))]
    public void An_export_becomes_what_stands_beside_it(string name)
    {
        var folder = Path.Combine(Folder, name);
        using var expected = JsonDocument.Parse(File.ReadAllText(Path.Combine(folder, "expected.json")));
        var wanted = expected.RootElement.EnumerateObject().Where(item => item.Name != "about").ToDictionary(item => item.Name, item => item.Value);
        wanted.Should().NotBeEmpty();
        var all = Actual(folder);
        var actual = all.Where(item => wanted.ContainsKey(item.Key) || item.Key is "refused" or "ledger" or "findings" or "setAside").ToDictionary();
        JsonSerializer.Serialize(actual.OrderBy(item => item.Key, StringComparer.Ordinal).ToDictionary(), Indented)
            .Should().Be(JsonSerializer.Serialize(wanted.OrderBy(item => item.Key, StringComparer.Ordinal).ToDictionary(), Indented));
    }

    [Fact]
    public void The_corpus_is_as_large_as_it_was_promised() => Cases.Should().HaveCountGreaterThanOrEqualTo(40);

    private static Dictionary<string, object> Actual(string folder)
    {
        var program = Path.Combine(folder, "program.json");
        ReadingResult reading;
        try
        {
            var settings = File.Exists(program) ? ProgramFile.Parse(File.ReadAllText(program)) : new ProgramSettings();
            reading = new ProgramReader().Read(settings, folder, new ReadOptions { Threads = 2 });
        }
        catch (UnusableDataException refusal)
        {
            return new() { ["refused"] = refusal.Diagnostics.Select(one => Shown(one, count: false)) };
        }

        var cells = reading.Tally.Cells;
        var bounded = new ProgramReader().Read(File.Exists(program) ? ProgramFile.Parse(File.ReadAllText(program)) : new ProgramSettings(), folder, new ReadOptions { Threads = 2, Budget = new(0, 0, 0, 1 << 20) });
        JsonSerializer.Serialize(bounded.Tally.Cells).Should().Be(JsonSerializer.Serialize(cells), "memory that is bounded changes nothing");
        foreach (var export in reading.Understanding)
        {
            cells.Ledger.Where(cell => cell.Export == export.Export).Sum(cell => cell.Rows).Should().Be(export.Files.Sum(file => file.Rows), "nothing may be lost");
        }

        return new()
        {
            ["files"] = reading.Understanding.SelectMany(export => export.Files).Select(Shown),
            ["ledger"] = cells.Ledger.GroupBy(cell => cell.Export).Where(export => export.Any(cell => cell.Rows > 0))
                .ToDictionary(export => Word(export.Key), export => Counts(export.Select(cell => (Word(cell.Entry), cell.Rows)), sorted: false)),
            ["findings"] = reading.Diagnostics.Select(one => Shown(one, count: true)),
            ["firstLines"] = reading.Diagnostics.Where(one => !one.Places.IsEmpty).Select(one => $"{one.Code}: {string.Join(", ", one.Places.Select(place => place.Line))}"),
            ["setAside"] = reading.SetAside.Select(row => $"{row.File}:{row.Line} {row.Code}{(row.FirstLine is { } first ? $" of {first}" : "")}"),
            ["outcomes"] = Counts(cells.Screens.Select(cell => (Word(cell.Outcome), cell.Runs))),
            ["sites"] = Counts(cells.Screens.Select(cell => (cell.Site, cell.Runs))),
            ["days"] = Counts(cells.Screens.Select(cell => (cell.Day.ToString("O", CultureInfo.InvariantCulture), cell.Runs))),
            ["followUp"] = Counts(cells.Screens.Where(cell => Word(cell.FollowUp) != "none").Select(cell => (Word(cell.FollowUp), cell.Runs))),
        };
    }

    private static string Shown(FileUnderstanding file) =>
        $"{file.Name}: {file.Format}" + (file.Encoding is { } encoding ? $", {encoding}" : "") + (file.Delimiter is { } delimiter ? $", {delimiter}" : "")
        + (file.Sheet is { } sheet ? $", sheet {sheet}" : "") + (file.HeadingLine is { } line ? $", headings {line}" : "")
        + (file.LinesBeforeHeadings > 0 ? $", before {file.LinesBeforeHeadings}" : "");

    private static string Shown(Diagnostic one, bool count) =>
        $"{Word(one.Severity)} {one.Code}" + (one.File.Length > 0 ? $" {one.File}" : "") + (one.Line is { } line ? $":{line}" : "")
        + (one.Column.Length > 0 ? $" {one.Column}" : "") + (count ? $" x{one.Occurrences}" : "");

    private static string Counts(IEnumerable<(string Name, long Count)> counts, bool sorted = true)
    {
        var sums = counts.GroupBy(one => one.Name).Select(one => (Name: one.Key, Count: one.Sum(item => item.Count))).Where(one => one.Count > 0);
        return string.Join(", ", (sorted ? sums.OrderBy(one => one.Name, StringComparer.Ordinal) : sums).Select(one => $"{one.Name} {one.Count}"));
    }

    private static string Word(Enum value) => string.Concat(value.ToString().Select((c, at) => char.IsUpper(c) ? (at > 0 ? "-" : "") + char.ToLowerInvariant(c) : c.ToString()));
}
