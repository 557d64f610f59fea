using System.Text;
using ScreenStats.Reporting;
using ScreenStats.Tests.Synthesis;

namespace ScreenStats.Tests.Formats;

/// <summary>The same program in twelve dialects and four formats gives the same tables, byte by byte.</summary>
public sealed class RoundTripTests
{
    private static readonly Lazy<SortedDictionary<string, string>> Plain = new(() => Tables(new Dialect("plain")));

    private static readonly Dialect[] Dialects =
    [
        // Twelve dialects of text.
        new("UTF-8 with mark, CR LF") { Encoding = new UTF8Encoding(true), LineEnd = "\r\n" },
        new("semicolons, stated") { Delimiter = ";", Before = "sep=;\n" },
        new("tabs") { Delimiter = "\t", Extension = "tsv" },
        new("vertical bars in .txt") { Delimiter = "|", Extension = "txt" },
        new("UTF-16 little endian") { Encoding = new UnicodeEncoding(false, true), Delimiter = "\t" },
        new("UTF-16 big endian") { Encoding = new UnicodeEncoding(true, true), Delimiter = ";" },
        new("Windows-1252") { Encoding = CodePagesEncodingProvider.Instance.GetEncoding(1252)!, Delimiter = ";" },
        new("all in quotes") { AllQuoted = true, LineEnd = "\r\n" },
        new("lines before the headings") { Before = "Screening log\n\nExported, with remarks, by the kiosk\n" },
        new("CR alone") { LineEnd = "\r" },
        new("other headings, turned round") { Turned = true, Heading = heading => heading switch { "collected_at" => "Date Collected [local time]", "person" => " BADGE (pseudonym) ", "site" => "Locatión", _ => heading.ToUpperInvariant().Replace('_', ' ') } },
        new("day first, own words")
        {
            Delimiter = ";", Date = "d.M.yyyy HH:mm:ss",
            Word = word => word switch { "positive" => "++", "negative" => "o.B.", "indeterminate" => "fraglich", "inconclusive" => "?", "invalid" => "ungültig", _ => word },
            Program = ", \"exports\": { \"screening\": { \"words\": { \"++\": \"positive\", \"o.B.\": \"negative\", \"?\": \"inconclusive\", \"ungültig\": \"invalid\" } }, "
                + "\"confirmatory\": { \"words\": { \"++\": \"positive\", \"o.B.\": \"negative\", \"fraglich\": \"indeterminate\" } } }",
        },

        // And the other formats.
        new("gzip") { Compressed = 1 },
        new("gzip of three members") { Compressed = 3, Delimiter = ";" },
        new("workbook") { Extension = "xlsx" },
        new("workbook in gzip") { Extension = "xlsx", Compressed = 1 },
        new("resources") { Resources = true },
        new("resources in gzip beside a workbook in gzip") { Resources = true, Compressed = 2, Extension = "xlsx" },
    ];

    public static TheoryData<string> Names => [.. Dialects.Select(dialect => dialect.Name)];

    [Theory]
    [MemberData(nameof(Names))]
    public void A_program_gives_the_same_tables_however_it_is_written(string name)
    {
        var tables = Tables(Dialects.Single(dialect => dialect.Name == name));
        tables.Keys.Should().Equal(Plain.Value.Keys);
        foreach (var (table, text) in tables) text.Should().Be(Plain.Value[table], table);
    }

    [Fact]
    public void The_tables_hold_what_the_program_was_made_of()
    {
        var ledger = Plain.Value["ledger.csv"];
        ledger.Should().Contain("screening,duplicate,1").And.Contain("screening,set-aside,1").And.Contain($"confirmatory,counted,{SmallProgram.Specimens.Count}");
        Plain.Value["positivity.csv"].Should().Contain("Nörd").And.Contain("Works, east");
    }

    private static SortedDictionary<string, string> Tables(Dialect dialect)
    {
        using var folder = new TemporaryFolder();
        dialect.Write(folder.Path);
        var program = ScreeningProgram.Open(folder.Path);
        var report = folder.Combine("report");
        Report.Write(program.Read().Tally.Evaluate(program.Settings), report);
        return new(Directory.EnumerateFiles(Path.Combine(report, "tables")).ToDictionary(file => Path.GetFileName(file), file => File.ReadAllText(file)), StringComparer.Ordinal);
    }
}
