using System.IO.Compression;
using System.Text;

namespace ScreenStats.Cli.Tests.Commands;

/// <summary>
/// Tries to get the text of a cell out: every cell that is free to hold anything holds a marker, and every stream and file is
/// searched for it in every form in which it could come out. Sites, lots, kits and dates may be shown, and an operator's
/// pseudonym in the tables by operator; nothing else.
/// </summary>
public sealed class PrivacyPromiseTests : IDisposable
{
    private const string Marker = "Zqxjvk";
    private const string Headings = "person,site,collected_at,result,lot,kit,lot_expiry,read_at,operator,specimen,collection,symptomatic,exposed,control,screen_id,";

    private readonly ProgramOnDisk program = new();

    public PrivacyPromiseTests() => program.Write("program.json", """{ "title": "Small works", "timeZone": "Etc/UTC" }""");

    public void Dispose() => program.Dispose();

    public static TheoryData<string, string, string> Failures => new()
    {
        { "free cells of good rows", Row(1) + Row(2) + Row(3), "" },
        { "unknown words everywhere", Row(1) + $"p2,Dock,2026-01-05T08:00,{Marker},A1,K1,{Marker},{Marker},o1,{Marker},{Marker},{Marker},{Marker},{Marker},{Marker}-2,{Marker},{Marker}\n", "" },
        { "unreadable dates", Row(1) + $"p2,Dock,{Marker},negative,A1,K1,,,o1,,,,,,,,\n", "" },
        { "duplicates and conflicts", Row(1) + Row(1) + Row(1).Replace("negative", "positive", StringComparison.Ordinal), "" },
        { "too many fields", Row(1) + Row(2).TrimEnd('\n') + $",{Marker},{Marker}\n", "" },
        { "text behind a quote", Row(1) + $"\"p2\"{Marker},Dock,2026-01-05T08:00,negative,A1,K1,,,o1,,,,,,,,\n", "" },
        { "a quote that is never closed", Row(1) + $"\"{Marker},Dock,2026-01-05T08:00,negative\n" + Row(2), "" },
        { "names", Row(1) + $"{Marker} Ada,Dock,2026-01-05T08:00,negative,A1,K1,,,o1,,,,,,,,\n", "" },
        { "addresses", Row(1) + $"{Marker}@example.org,Dock,2026-01-05T08:00,negative,A1,K1,,,{Marker}@example.org,,,,,,,,\n", "" },
        { "every row set aside", $"p1,Dock,{Marker},{Marker},A1,K1,,,o1,,,,,,,,\n", "" },
        { "columns that should not be there", Row(1).Replace($",{Marker},{Marker}\n", $",{Marker}@example.org,{Marker} Ada\n", StringComparison.Ordinal), "" },
        { "ambiguous dates", $"{Marker}1,Dock,01/02/2026,negative,A1,K1,,,o1,,,,,,,,\n{Marker}2,Dock,03/04/2026,negative,A1,K1,,,o1,,,,,,,,\n", "" },
        { "a file without headings", "", "headless" },
        { "headings that are people's", Row(1), "hostile" },
    };

    [Theory]
    [MemberData(nameof(Failures))]
    public void No_cell_comes_out(string what, string rows, string mode)
    {
        var headings = mode switch
        {
            "headless" => $"{Marker} Ada,{Marker}@example.org,2026-01-05,negative\n{Marker}2,Dock,2026-01-05,negative\n",
            "hostile" => Headings + $"{Marker}@example.org,+4416329{Marker.Length}0123\n",
            _ => Headings + "note,remark\n",
        };
        program.Write("screening.csv", headings + rows);
        program.Write("confirmatory.csv", $"person,collected_at,result,reported_at,method,reason,remark\n{Marker}-1,2026-01-05T12:00,positive,{Marker},{Marker},{Marker},{Marker}\n"
            + $"{Marker}-1,2026-01-05T12:00,{Marker},{Marker},{Marker},{Marker},{Marker}\n");
        Key();

        foreach (var args in (string[][])
        [
            ["evaluate", "works"], ["evaluate", "works", "--json"], ["inspect", "works"], ["inspect", "works", "--json"], ["inspect", "works/screening.csv"],
            ["pseudonymize", "works/screening.csv", "--columns", "person", "--operator-columns", "operator", "--drop", "note,remark,screen_id", "--key-file", "key", "--out", "out.csv"],
            ["pseudonymize", "works/screening.csv", "--columns", "person", "--generalise", "collected_at:day", "--key-file", "key", "--out", "other.csv", "--json"],
            ["pseudonymize", "works/screening.csv", "--columns", "persn", "--key-file", "key", "--out", "third.csv"],
        ])
        {
            var run = Runner.In(program.Here, args);

            run.Code.Should().BeLessThan(3, $"{what}: {string.Join(' ', args)}: {run.Errors}");
            Search(Encoding.UTF8.GetBytes(run.Output + run.Errors), $"{what}: {string.Join(' ', args)}");
        }

        foreach (var file in Directory.GetFiles(program.Root, "*", SearchOption.AllDirectories))
        {
            if (Path.GetDirectoryName(file) == Path.GetDirectoryName(program.At("x"))) continue;
            var name = Path.GetRelativePath(program.Root, file);
            // What is kept of a file that is pseudonymized is kept; what was to be replaced is not.
            if (name is "out.csv" or "other.csv") File.ReadAllText(file).Should().NotMatchRegex($"(?m)^\"?{Marker}");
            else Search(File.ReadAllBytes(file), $"{what}: {name}");
        }
    }

    [Fact]
    public void The_search_finds_what_is_there()
    {
        var search = () => Search(Encoding.UTF8.GetBytes("x" + Marker.ToUpperInvariant()), "");
        search.Should().Throw<Xunit.Sdk.XunitException>();
        using var packed = new MemoryStream();
        using (var archive = new ZipArchive(packed, ZipArchiveMode.Create, leaveOpen: true))
        {
            using var entry = archive.CreateEntry("a").Open();
            entry.Write(Encoding.UTF8.GetBytes(Marker));
        }

        var inside = () => Search(packed.ToArray(), "");
        inside.Should().Throw<Xunit.Sdk.XunitException>();
    }

    [Fact]
    public void Cells_that_a_spreadsheet_would_run_are_harmless_in_every_file_of_the_report()
    {
        program.Write("screening.csv", "person,site,collected_at,result,lot,kit\n" + string.Concat(new[] { "=1+1", "+1+cmd|' /C calc'!A0", "-2+3", "@SUM(A1)", "\"\t=1\"", "\"=HYPERLINK(\"\"x\"\")\"", "\uFF1D1" }
            .Select((cell, i) => $"p{i},{cell},2026-01-05T08:0{i},{(i % 2 == 0 ? "positive" : "nonsense")},{cell},{cell}\n")));

        Runner.In(program.Here, "evaluate", "works", "--set-aside-text").Code.Should().Be(0);

        foreach (var file in Directory.GetFiles(program.Report, "*.csv", SearchOption.AllDirectories))
        {
            foreach (var cell in Cells(File.ReadAllText(file)))
            {
                if (cell.Length == 0 || double.TryParse(cell, System.Globalization.CultureInfo.InvariantCulture, out _)) continue;
                "=+-@\t\r\uFF1D\uFF0B\uFF0D\uFF20".Should().NotContain(cell[..1], $"a cell of {Path.GetFileName(file)} begins with it");
            }
        }

        using var workbook = ZipFile.OpenRead(Path.Combine(program.Report, "workbook.xlsx"));
        foreach (var entry in workbook.Entries)
        {
            using var reader = new StreamReader(entry.Open());
            var text = reader.ReadToEnd();
            text.Should().NotContain("<f>").And.NotContain("<x:f>").And.NotMatchRegex("<(x:)?(t|v)( [^>]*)?>[=@]");
        }
    }

    [Fact]
    public void A_site_cannot_steer_the_terminal()
    {
        program.Write("screening.csv", "person,site,collected_at,result,lot\np1,\u001b[31mDock\u202E,2026-01-05T08:00,positive,A1\n");
        foreach (var command in (string[])["evaluate", "inspect"])
        {
            var run = Runner.In(program.Here, command, "works");
            run.Code.Should().Be(0, run.Errors);
            (run.Output + run.Errors).Should().NotContain("\u001b").And.NotContain("\u202E");
        }
    }

    private static string Row(int number) =>
        $"{Marker}-{number},Dock,2026-01-05T08:0{number},negative,A1,K1,2027-01-01,2026-01-05T08:2{number},o1,nasal,self,no,no,,{Marker}-s{number},{Marker},{Marker}\n";

    private static void Search(byte[] bytes, string where)
    {
        if (bytes.AsSpan().StartsWith("PK"u8))
        {
            using var archive = new ZipArchive(new MemoryStream(bytes));
            foreach (var entry in archive.Entries)
            {
                using var unpacked = new MemoryStream();
                using (var stream = entry.Open()) stream.CopyTo(unpacked);
                Search(unpacked.ToArray(), $"{where}: {entry.FullName}");
            }

            return;
        }

        foreach (var text in new[] { Encoding.UTF8.GetString(bytes), Encoding.Unicode.GetString(bytes) })
        {
            text.Contains(Marker, StringComparison.OrdinalIgnoreCase).Should().BeFalse(where);
            text.Contains(Convert.ToBase64String(Encoding.UTF8.GetBytes(Marker)), StringComparison.Ordinal).Should().BeFalse(where);
        }
    }

    private static IEnumerable<string> Cells(string csv)
    {
        var cell = new StringBuilder();
        var quoted = false;
        foreach (var c in csv)
        {
            if (c == '"') quoted = !quoted;
            else if (!quoted && c is ',' or '\n')
            {
                yield return cell.ToString();
                cell.Clear();
            }
            else cell.Append(c);
        }
    }

    private void Key()
    {
        var key = Path.Combine(program.Root, "key");
        File.WriteAllText(key, "9f3c1a77e2b84d065bd1c8f02e94a7634418fdc60b7ae9253d70cb15f6821e9a\n");
        if (!OperatingSystem.IsWindows()) File.SetUnixFileMode(key, UnixFileMode.UserRead | UnixFileMode.UserWrite);
    }
}
