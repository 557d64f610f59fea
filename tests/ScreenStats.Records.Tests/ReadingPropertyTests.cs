using System.Globalization;
using System.Text;
using System.Text.Json;
using CsCheck;
using ScreenStats.Counting.Diagnostics;
using ScreenStats.Counting.Ledger;

namespace ScreenStats.Records.Tests;

public class ReadingPropertyTests
{
    private static readonly string[] Pieces =
        ["p1", "p2", "p3", "North", "South", "2026-01-05T08:00", "2026-01-05T08:10", "2026-01-06", "05/01/2026", "neg", "pos", "inv", "", "x", "\"a,b\"", "\"c\nd\"", "\"open", "y\"z", "positive"];

    [Fact]
    public void The_ledger_adds_up_for_any_bytes() =>
        Gen.Byte.Array[0, 400].Sample(bytes => AddsUp(bytes), iter: 300);

    [Fact]
    public void The_ledger_adds_up_for_any_cells_behind_good_headings() =>
        Row.Array[0, 12].Sample(rows => AddsUp(Encoding.UTF8.GetBytes("person,site,collected_at,result,control\n" + string.Join("\n", rows))), iter: 500);

    [Fact]
    public void The_ledger_adds_up_for_any_mutation_of_a_good_file()
    {
        var good = Encoding.UTF8.GetBytes(Good(Enumerable.Range(0, 30)));
        Gen.Select(Gen.Int[0, good.Length - 1], Gen.Byte, Gen.Int[0, 2]).Array[1, 6].Sample(changes =>
        {
            var bytes = good.ToList();
            foreach (var (at, value, how) in changes)
            {
                var place = at % bytes.Count;
                if (how == 0) bytes[place] = value;
                else if (how == 1) bytes.RemoveAt(place);
                else bytes.Insert(place, value);
            }

            AddsUp([.. bytes]);
        }, iter: 500);
    }

    [Fact]
    public void Reading_does_not_depend_on_the_number_of_threads_or_on_how_the_export_is_split()
    {
        // Enough rows for a dozen blocks, with quoted line breaks, blank lines, duplicates and unreadable cells among them.
        var rows = Enumerable.Range(0, 60_000).ToArray();
        using var whole = new TestFolder().With("screening.csv", Good(rows));
        var expected = Shown(whole.Read(options: new ReadOptions { Threads = 1 }), lines: true);
        foreach (var threads in new[] { 2, 3, 8 })
        {
            Shown(whole.Read(options: new ReadOptions { Threads = threads }), lines: true).Should().Be(expected, $"with {threads} threads");
        }

        using var split = new TestFolder()
            .With("screening-1.csv", Good(rows[..17])).With("screening-2.csv", Good(rows[17..30_001])).With("screening-3.csv", Good(rows[30_001..]));
        Shown(split.Read(options: new ReadOptions { Threads = 2 }), lines: false).Should().Be(Shown(whole.Read(), lines: false));
    }

    [Fact]
    public void Reading_does_not_depend_on_the_culture()
    {
        using var folder = new TestFolder().With("screening.csv", Good(Enumerable.Range(0, 200)));
        var expected = Shown(folder.Read(), lines: true);
        var before = CultureInfo.CurrentCulture;
        try
        {
            foreach (var culture in new[] { "de-DE", "tr-TR", "ar-SA" })
            {
                CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo(culture);
                Shown(folder.Read(), lines: true).Should().Be(expected, culture);
            }
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    private static Gen<string> Row => Gen.OneOf(Gen.Int[0, Pieces.Length - 1].Select(piece => Pieces[piece]).Array[0, 6].Select(cells => string.Join(",", cells)),
        Gen.Const("p1,North,2026-01-05T08:00,neg,"), Gen.Const("p2,South,2026-01-05T09:00,POS"));

    private static void AddsUp(byte[] bytes)
    {
        using var folder = new TestFolder().With("screening.csv", bytes);
        ReadingResult reading;
        try
        {
            reading = folder.Read();
        }
        catch (UnusableDataException exception)
        {
            exception.Diagnostics[0].Severity.Should().Be(Severity.Error);
            return;
        }

        var rows = reading.Understanding.Single().Files.Single().Rows;
        TestFolder.Rows(reading).Should().Be(rows);
        var removed = TestFolder.Rows(reading, LedgerEntry.SetAside) + TestFolder.Rows(reading, LedgerEntry.Duplicate);
        reading.SetAside.Should().HaveCount((int)removed);
        reading.Tally.Cells.Screens.Sum(cell => cell.Runs).Should().Be(TestFolder.Rows(reading, LedgerEntry.Counted));
        reading.Tally.Cells.Completeness.Should().OnlyContain(cell => cell.Rows == rows && cell.Recorded <= rows);
    }

    private static string Good(IEnumerable<int> rows)
    {
        var text = new StringBuilder("screen_id,person,site,collected_at,result,lot,kit,operator,note\n");
        foreach (var i in rows)
        {
            var result = (i % 17) switch { 3 => "pos", 9 => "Invalid", 12 => "what", _ => "neg" };
            var date = i % 101 == 7 ? "soon" : $"2026-0{1 + (i / 30_000)}-{1 + (i % 28):00}T{6 + (i % 12):00}:{i % 60:00}:00";
            var id = i % 113 == 50 ? i - 1 : i;
            var note = (i % 71) switch { 0 => "\"two\nlines\"", 1 => "\"a \"\"b\"\"\"", _ => "" };
            text.Append(CultureInfo.InvariantCulture, $"s{id},p-{i % 997:x4},\"Site {i % 5}\",{date},{result},L{i % 7},K{i / 25},op-{i % 11},{note}\n");
            if (i % 211 == 5) text.Append('\n');
        }

        return text.ToString();
    }

    private static string Shown(ReadingResult reading, bool lines)
    {
        var cells = reading.Tally.Cells with { Diagnostics = [] };
        var text = JsonSerializer.Serialize(cells) + JsonSerializer.Serialize(reading.Understanding.SelectMany(export => export.Columns));
        return lines
            ? text + JsonSerializer.Serialize(reading.Diagnostics) + JsonSerializer.Serialize(reading.SetAside)
            : text + string.Join(',', reading.SetAside.Select(row => row.Code)) + string.Join(',', reading.Diagnostics.Select(one => $"{one.Code} {one.Column} {one.Occurrences}"));
    }
}
