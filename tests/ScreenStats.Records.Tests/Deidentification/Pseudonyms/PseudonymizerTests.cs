using System.Text;
using CsCheck;
using ScreenStats.Counting.Diagnostics;
using ScreenStats.Records.Deidentification.Pseudonyms;
using ScreenStats.Records.Formats;

namespace ScreenStats.Records.Tests.Deidentification.Pseudonyms;

public sealed class PseudonymizerTests
{
    [Fact]
    public void Other_columns_line_ends_quotes_and_blank_lines_keep_their_bytes()
    {
        using var folder = new PseudonymFolder();
        const string source = "sep=;\r\nsite;\"Badge No\";note\r\n\r\n\"North;  \"; P-1 ;\"a \"\"b\"\"\r\nc\"\r\nS\u00FCd;\"P-2\";-1\n  ;;\r\nlast;p-1;x";

        var made = folder.Of(source, "badge no");

        var one = folder.One("P-1");
        var two = folder.One("P-2");
        made.Should().Be($"sep=;\r\nsite;\"Badge No\";note\r\n\r\n\"North;  \";{one};\"a \"\"b\"\"\r\nc\"\r\nS\u00FCd;\"{two}\";-1\n  ;;\r\nlast;{one};x");
    }

    [Fact]
    public void Lines_above_the_headings_may_name_people_and_are_left_out()
    {
        using var folder = new PseudonymFolder();
        var made = folder.Of("Exported by Ada Example;;\n\nSite: North;;\nbadge;site\nP-1;x\n", "badge", "site");
        made.Should().StartWith("badge;site\np1-");
        folder.Result!.LinesDropped.Should().Be(2);
    }

    [Fact]
    public void A_heading_that_is_not_there_shows_no_line_above_the_headings()
    {
        using var folder = new PseudonymFolder();
        var act = () => folder.Of("Exported by Ada Example\nbadge;site\nP-1;x\n", "person");
        act.Should().Throw<PseudonymizeException>().Which.Message.Should().Contain("has no heading \"person\"").And.NotContain("Ada");
    }

    [Fact]
    public void A_column_that_stays_and_holds_names_or_is_called_so_is_warned_of()
    {
        using var folder = new PseudonymFolder();
        folder.Of("badge,who,born,site\nP-1,Anna Tournemire,,North\nP-2,Thomas Valbrun,,South\nP-3,Maria Petitval,,North\n", "badge");

        folder.Result!.Diagnostics.Should().ContainSingle(one => one.Code == PrivacyDiagnostics.IdentifierValues)
            .Which.Message.Should().Contain("column 2 (\"who\") was left as it was").And.Contain("--drop").And.NotContain("Anna");
        folder.Result.Diagnostics.Should().NotContain(one => one.Message.Contains("site", StringComparison.Ordinal));
    }

    [Fact]
    public void What_a_killed_run_left_is_removed_by_the_next_for_the_same_place_and_nothing_else_is()
    {
        using var folder = new PseudonymFolder();
        var request = folder.Request("badge,site\nP-1,North\n"u8.ToArray(), "badge");
        var target = Path.GetFileName(request.Target);
        string Put(string name, bool isPrivate = true)
        {
            var path = Path.Combine(folder.Root, name);
            File.WriteAllText(path, "Ada Example");
            if (isPrivate) PseudonymFolder.Private(path);
            else if (!OperatingSystem.IsWindows()) File.SetUnixFileMode(path, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.OtherRead);
            return name;
        }

        Put($".{target}.0a1b2c3d.part");
        var held = Put($".{target}.0a1b2c3e.part");
        string[] others = [Put(".other.csv.0a1b2c3d.part"), Put($".{target}.notours1.part"), Put($".{target}.part"), Put($"{target}.0a1b2c3d.part")];
        var open = OperatingSystem.IsWindows() ? null : Put($".{target}.0a1b2c3f.part", isPrivate: false);

        using (new FileStream(Path.Combine(folder.Root, held), FileMode.Open, FileAccess.ReadWrite, FileShare.None)) folder.Of(request);

        folder.Left().Should().BeEquivalentTo([target, held, .. others, .. open is null ? (string[])[] : [open]]);
    }

    [Fact]
    public void A_blank_stays_blank()
    {
        using var folder = new PseudonymFolder();
        var made = folder.Of("badge,site\n,North\n\"\",North\n  ,North\nn/a,North\nNULL,North\n-,North\nP-1\n", "badge");

        made.Should().StartWith("badge,site\n,North\n\"\",North\n  ,North\nn/a,North\nNULL,North\n-,North\np1-");
        folder.Result!.Columns[0].Should().Match<PseudonymizedColumn>(column => column.Blank == 6 && column.Replaced == 1);
    }

    [Fact]
    public void Columns_are_left_out_and_dates_made_coarser()
    {
        using var folder = new PseudonymFolder();
        var request = folder.Request("name,badge,at,born,seen\nAda Example,P-1,2026-01-07T08:30,31.12.1984,2026-01-07\n,P-2,,,soon\n"u8.ToArray(), "badge") with
        {
            Drop = ["Name"],
            Generalise = [("at", DatePrecision.Week), ("born", DatePrecision.Year), ("seen", DatePrecision.Month)],
        };

        var lines = folder.Of(request).Split('\n');

        lines[0].Should().Be("badge,at,born,seen");
        lines[1].Should().EndWith(",2026-01-05,1984,2026-01");
        lines[2].Should().EndWith(",,,");
        folder.Result!.Columns[4].Unreadable.Should().Be(1);
        folder.Result.Diagnostics.Should().ContainSingle().Which.Code.Should().Be(PrivacyDiagnostics.DateNotGeneralised);
    }

    [Fact]
    public void Dates_that_could_be_read_two_ways_are_refused_until_their_order_is_stated()
    {
        using var folder = new PseudonymFolder();
        var request = folder.Request("badge,at\nP-1,01/02/2026\nP-2,03/04/2026\n"u8.ToArray(), "badge") with { Generalise = [("at", DatePrecision.Day)] };
        var act = () => folder.Of(request);

        act.Should().Throw<PseudonymizeException>().WithMessage("*line 2 and line 3*--date-order*");
        folder.Left().Should().BeEmpty();
        folder.Of(request with { DateOrder = Counting.Programs.DateOrder.DayFirst }).Should().Contain(",2026-02-01\n").And.Contain(",2026-04-03\n");
    }

    [Theory]
    [InlineData("badge,site\nP-1,\"North\"x\n", 2L)]
    [InlineData("badge,site\nP-1,North\nP-2,North,Ada Example\n", 3L)]
    [InlineData("badge,site\nP-1,\"North\nP-2,South\n", 2L)]
    [InlineData("badge,site\nP-1,North\n\"P-\uFFFD\",South\n", 3L)]
    public void A_row_whose_columns_are_in_doubt_refuses_the_file(string source, long line)
    {
        using var folder = new PseudonymFolder();
        var act = () => folder.Of(source, "badge");

        var found = act.Should().Throw<UnusableDataException>().Which.Diagnostics.Should().ContainSingle().Subject;
        found.Line.Should().Be(line);
        found.Message.Should().NotContain("Example").And.NotContain("North");
        folder.Left().Should().BeEmpty();
    }

    [Fact]
    public void Nothing_is_written_over_not_even_through_a_link_that_leads_nowhere()
    {
        using var folder = new PseudonymFolder();
        var request = folder.Request("badge\nP-1\n"u8.ToArray(), "badge");
        var act = () => folder.Of(request);

        File.WriteAllText(request.Target, "mine");
        act.Should().Throw<PseudonymizeException>().WithMessage("*exists*");
        File.ReadAllText(request.Target).Should().Be("mine");
        File.Delete(request.Target);
        if (!OperatingSystem.IsWindows())
        {
            File.CreateSymbolicLink(request.Target, Path.Combine(folder.Root, "elsewhere"));
            act.Should().Throw<PseudonymizeException>().WithMessage("*exists*");
        }

        var same = () => folder.Of(request with { Target = request.Source });
        same.Should().Throw<PseudonymizeException>();
        var key = () => folder.Of(request with { Target = folder.KeyFile });
        key.Should().Throw<PseudonymizeException>();
        File.ReadAllText(folder.KeyFile).Should().StartWith(PseudonymFolder.Key);
    }

    [Fact]
    public void What_is_written_can_be_read_by_its_owner_only()
    {
        if (OperatingSystem.IsWindows()) return;
        using var folder = new PseudonymFolder();
        var request = folder.Request("badge\nP-1\n"u8.ToArray(), "badge");
        folder.Of(request);
        File.GetUnixFileMode(request.Target).Should().Be(UnixFileMode.UserRead | UnixFileMode.UserWrite);
    }

    [Fact]
    public void Stopping_leaves_nothing()
    {
        using var folder = new PseudonymFolder();
        using var stop = new CancellationTokenSource();
        var text = new StringBuilder("badge\n");
        for (var i = 0; i < 200_000; i++) text.Append("P-").Append(i).Append('\n');
        var request = folder.Request(Encoding.UTF8.GetBytes(text.ToString()), "badge");
        var act = () => Pseudonymizer.Write(request, new StopAfter(stop, 3), stop.Token);

        act.Should().Throw<OperationCanceledException>();
        folder.Left().Should().BeEmpty();
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void UTF_16_and_Windows_1252_become_UTF_8_and_link(bool wide)
    {
        using var folder = new PseudonymFolder();
        const string source = "badge\tsite\nZo\u00EB\tS\u00FCd\n";
        var bytes = wide ? [0xFF, 0xFE, .. Encoding.Unicode.GetBytes(source)] : Encoding.Latin1.GetBytes(source);

        var made = folder.Of(folder.Request(bytes, "badge"));

        made.Should().Be($"badge\tsite\n{folder.One("ZO\u00CB")}\tS\u00FCd\n");
        folder.Result!.Encoding.Should().NotBeNull();
    }

    [Fact]
    public void Windows_1252_that_shows_only_late_is_noticed()
    {
        using var folder = new PseudonymFolder();
        var source = "badge\n" + string.Concat(Enumerable.Repeat("P-00000001\n", 150_000)) + "Zo\u00EB\n";

        var made = folder.Of(folder.Request(Encoding.Latin1.GetBytes(source), "badge"));

        made.Should().EndWith(folder.One("Zo\u00EB") + "\n");
        folder.Left().Should().HaveCount(2);
    }

    [Fact]
    public void Formulas_are_neutralised_and_numbers_dates_and_signs_survive()
    {
        using var folder = new PseudonymFolder();
        var made = folder.Of("badge,x\nP-1,=1+1\nP-2,\"=cmd|' /C calc'!A0\"\nP-3,-1\nP-4,+\nP-5,-\nP-6,\"+1,5\"\nP-7,@SUM(A1)\nP-8,\"\t=1\"\nP-9,-1e-5\nP-10,+49 1632 960123\nP-11,-2+cmd\nP-12,\uFF1D1\n", "badge");

        var cells = made.Split('\n').Skip(1).Where(line => line.Length > 0).Select(line => line[(line.IndexOf(',', StringComparison.Ordinal) + 1)..]);
        cells.Should().Equal("'=1+1", "\"'=cmd|' /C calc'!A0\"", "-1", "+", "-", "\"+1,5\"", "'@SUM(A1)", "\"'\t=1\"", "-1e-5", "+49 1632 960123", "'-2+cmd", "'\uFF1D1");
        folder.Result!.Diagnostics.Should().ContainSingle().Which.Occurrences.Should().Be(6);
    }

    [Theory]
    [InlineData("colour", "has no heading \"colour\", and none near it*")]
    [InlineData("siet", "has no heading \"siet\"*nearest is \"site\"*")]
    [InlineData("twice", "more than once")]
    public void A_column_that_cannot_be_found_is_refused(string column, string message)
    {
        using var folder = new PseudonymFolder();
        var act = () => folder.Of("site,twice,Twice\na,b,c\n", column);
        act.Should().Throw<PseudonymizeException>().WithMessage($"*{message}*");
    }

    [Fact]
    public void Our_own_splitting_of_a_record_agrees_with_the_reader()
    {
        var field = Gen.String[Gen.Int[0, 5].Select(i => "a\",\n b"[i]), 0, 6];
        field.Array[1, 6].Sample(texts =>
        {
            var record = Encoding.UTF8.GetBytes("x" + string.Join(',', texts.Select((text, i) => i % 2 == 0 ? text.Replace("\n", "", StringComparison.Ordinal) : "\"" + text.Replace("\"", "\"\"", StringComparison.Ordinal) + "\"")));
            using var splitter = new RecordSplitter((byte)',');
            splitter.Load(record, 0, record.Length);
            splitter.Next().Should().BeTrue();
            var fields = new List<(int Start, int End)>();
            var found = RecordFields.Find(record, (byte)',', fields);
            if (splitter.Fault.Malformed || splitter.RecordEnd != record.Length) return true;
            if (!found || fields.Count != splitter.FieldCount) return false;
            for (var f = 0; f < fields.Count; f++)
            {
                var raw = Encoding.UTF8.GetString(record[fields[f].Start..fields[f].End]);
                var plain = raw.StartsWith('"') ? raw[1..^1].Replace("\"\"", "\"", StringComparison.Ordinal) : raw;
                if (plain != Encoding.UTF8.GetString(splitter.Field(f))) return false;
            }

            return true;
        }, iter: 20_000);
    }

    private sealed class StopAfter(CancellationTokenSource stop, int times) : IProgress<ReadProgress>
    {
        private int told;

        public void Report(ReadProgress value)
        {
            if (++told == times) stop.Cancel();
        }
    }
}
