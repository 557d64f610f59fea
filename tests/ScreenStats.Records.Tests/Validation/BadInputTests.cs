using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using ScreenStats.Counting.Diagnostics;
using ScreenStats.Counting.Programs;

namespace ScreenStats.Records.Tests.Validation;

public class BadInputTests
{
    private const string Row = "p1,North,2026-01-05T08:00,neg\n";

    [Fact]
    public void A_missing_folder_is_one_message()
    {
        var read = () => new ProgramReader().Read(new ProgramSettings(), Path.Combine(Path.GetTempPath(), "no-such-folder-of-exports"));
        read.Should().Throw<UnusableDataException>().Which.Diagnostics.Should().ContainSingle().Which.Code.Should().Be(ReadingDiagnostics.MissingFolder);
    }

    [Fact]
    public void A_missing_screening_export_names_what_was_looked_for()
    {
        using var folder = new TestFolder();
        var found = folder.Refused().Should().ContainSingle().Subject;
        found.Code.Should().Be(ReadingDiagnostics.MissingFile);
        found.Message.Should().Contain("screening*.csv");
    }

    [Fact]
    public void Files_that_are_called_like_no_export_are_named_where_one_is_missing()
    {
        using var nothing = new TestFolder().With("registro.xlsx", [1]).With("labo.csv", "x\n").With("notes.docx", [1]);
        nothing.Refused().Should().ContainSingle().Which.Message.Should().Contain("called like no export: \"labo.csv\", \"registro.xlsx\".");

        using var half = new TestFolder().With("screening.csv", TestFolder.Headings + Row).With("labo.csv", "x\n");
        half.Read().Diagnostics.Should().ContainSingle().Which.Should().Match<Diagnostic>(one => one.Code == ReadingDiagnostics.FileNotRead && one.Message.Contains("\"labo.csv\" is called like no export and was not read"));

        using var whole = new TestFolder().With("screening.csv", TestFolder.Headings + Row).With("confirmatory.csv", "person,collected_at,result\np1,2026-01-05T09:00,neg\n").With("labo.csv", "x\n");
        whole.Read().Diagnostics.Should().BeEmpty();
        var named = new ProgramSettings { Exports = new ExportsSettings { Screening = new ExportSettings { Files = ["labo.csv"] } } };
        using var stated = new TestFolder().With("labo.csv", TestFolder.Headings + Row);
        stated.Read(named).Diagnostics.Should().BeEmpty();
    }

    [Fact]
    public void A_file_that_the_program_file_names_must_exist()
    {
        using var folder = new TestFolder().With("screening.csv", TestFolder.Headings + Row);
        var settings = new ProgramSettings { Exports = new ExportsSettings { Confirmatory = new ExportSettings { Files = ["laboratory.csv"] } } };
        folder.Refused(settings).Should().ContainSingle().Which.Message.Should().Contain("laboratory.csv");
    }

    public static TheoryData<string, byte[], string, long?> Files => new()
    {
        { "empty", [], ReadingDiagnostics.EmptyFile, null },
        { "a byte order mark only", [0xEF, 0xBB, 0xBF], ReadingDiagnostics.EmptyFile, null },
        { "blank lines only", "\n\r\n  \n"u8.ToArray(), ReadingDiagnostics.EmptyFile, null },
        { "random bytes", RandomBytes(4096), ReadingDiagnostics.NotText, null },
        { "a workbook", [.. "PK\u0003\u0004"u8, .. RandomBytes(64)], ReadingDiagnostics.NotText, null },
        { "UTF-32", [0xFF, 0xFE, 0, 0, 0x70, 0, 0, 0], ReadingDiagnostics.NotText, null },
        { "headings only", Encoding.UTF8.GetBytes(TestFolder.Headings), ReadingDiagnostics.NoRows, 1 },
        { "a missing column", "person,site,result\np1,North,neg\n"u8.ToArray(), ReadingDiagnostics.MissingColumn, 1 },
        { "no known heading", "a,b,c\n1,2,3\n"u8.ToArray(), ReadingDiagnostics.MissingColumn, 1 },
        { "the same heading twice", "person,site,collected_at,result,note,Note\np1,North,2026-01-05,neg,,\n"u8.ToArray(), ReadingDiagnostics.RepeatedHeading, 1 },
        { "two headings for one column", "badge,employee,site,collected_at,result\np1,q1,North,2026-01-05,neg\n"u8.ToArray(), ReadingDiagnostics.AmbiguousHeadings, 1 },
        { "an unclosed quote", Encoding.UTF8.GetBytes(TestFolder.Headings + Row + "p2,\"North,2026-01-05,neg\n" + Row + Row), ReadingDiagnostics.UnclosedQuote, 3 },
        { "a quote closed in the middle of a later row", Encoding.UTF8.GetBytes(TestFolder.Headings + Row + "p2,\"North,2026-01-05,neg\n" + Row + "p3,\"South\",2026-01-05,neg\n"), ReadingDiagnostics.UnclosedQuote, 3 },
        { "an unclosed quote behind a harmless one", Encoding.UTF8.GetBytes(TestFolder.Headings + "5\" p,\"North,2026-01-05,neg\n" + Row + "p3,\"South\",2026-01-05,neg\n"), ReadingDiagnostics.UnclosedQuote, 2 },
        { "an unclosed quote in the headings", Encoding.UTF8.GetBytes("person,\"site,collected_at,result\n" + Row), ReadingDiagnostics.UnclosedQuote, 1 },
        { "every row unreadable", Encoding.UTF8.GetBytes(TestFolder.Headings + "p1,North,soon,neg\n"), ReadingDiagnostics.NothingUsable, null },
    };

    [Theory]
    [MemberData(nameof(Files))]
    public void A_file_that_cannot_be_used_is_refused_with_its_place(string what, byte[] bytes, string code, long? line)
    {
        using var folder = new TestFolder().With("screening.csv", bytes);
        var found = folder.Refused();
        found[0].Code.Should().Be(code, what);
        found[0].Severity.Should().Be(Severity.Error);
        found[0].Line.Should().Be(line);
        found.Should().OnlyContain(diagnostic => diagnostic.Message.Length > 20 && diagnostic.Message.Contains('.'));
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void A_line_of_a_hundred_megabytes_is_one_message(bool quoted)
    {
        using var folder = new TestFolder();
        var path = Path.Combine(folder.Path, "screening.csv");
        using (var stream = File.Create(path))
        {
            stream.Write(Encoding.UTF8.GetBytes(TestFolder.Headings + Row + (quoted ? "p2,\"" : "p2,")));
            var part = new byte[1 << 20];
            part.AsSpan().Fill((byte)'x');
            for (var i = 0; i < 100; i++) stream.Write(part);
        }

        // One thread, so that what other tests allocate meanwhile does not count.
        var before = GC.GetAllocatedBytesForCurrentThread();
        var read = () => folder.Read(options: new ReadOptions { Threads = 1 });
        var found = read.Should().Throw<UnusableDataException>().Which.Diagnostics.Should().ContainSingle().Subject;
        found.Code.Should().Be(quoted ? ReadingDiagnostics.UnclosedQuote : ReadingDiagnostics.RecordTooLong);
        found.Line.Should().Be(3);
        (GC.GetAllocatedBytesForCurrentThread() - before).Should().BeLessThan(40 << 20, "the line is never held whole");
    }

    [Fact]
    public void A_first_line_of_two_megabytes_is_one_message()
    {
        using var folder = new TestFolder().With("screening.csv", new string('x', 2 << 20));
        folder.Refused().Should().ContainSingle().Which.Code.Should().Be(ReadingDiagnostics.RecordTooLong);
    }

    [Fact]
    public void A_record_of_just_one_mebibyte_is_read_and_one_byte_more_is_not()
    {
        static string Text(int extra) => TestFolder.Headings.TrimEnd() + ",note\n" + "p1,North,2026-01-05,neg," + new string('x', (1 << 20) - 24 + extra) + "\n";
        using var folder = new TestFolder().With("screening.csv", Text(0));
        TestFolder.Rows(folder.Read()).Should().Be(1);
        folder.With("screening.csv", Text(1));
        folder.Refused().Should().ContainSingle().Which.Code.Should().Be(ReadingDiagnostics.RecordTooLong);
    }

    [Fact]
    public void An_unclosed_quote_far_into_a_file_names_its_line_whatever_the_number_of_threads()
    {
        var text = new StringBuilder(TestFolder.Headings);
        for (var i = 0; i < 50_000; i++) text.Append(CultureInfo.InvariantCulture, $"p{i},{(i == 30_001 ? "\"" : "")}North,2026-01-05T08:00,{(i % 3 == 0 ? "\"neg\"" : "neg")}\n");
        using var folder = new TestFolder().With("screening.csv", text.ToString());
        foreach (var threads in new[] { 1, 2, 5 })
        {
            var read = () => folder.Read(options: new ReadOptions { Threads = threads });
            var found = read.Should().Throw<UnusableDataException>().Which.Diagnostics;
            found.Should().ContainSingle().Which.Should().Match<Diagnostic>(one => one.Code == ReadingDiagnostics.UnclosedQuote && one.Line == 30_003);
        }
    }

    [Fact]
    public void All_problems_of_all_files_are_reported_at_once()
    {
        using var folder = new TestFolder()
            .With("screening.csv", "person,site\np1,North\n").With("confirmatory.csv", "").With("controls.csv", RandomBytes(500));
        folder.Refused().Select(found => (found.File, found.Code)).Should().Equal(
            ("screening.csv", ReadingDiagnostics.MissingColumn),
            ("confirmatory.csv", ReadingDiagnostics.EmptyFile), ("controls.csv", ReadingDiagnostics.NotText));
    }

    [Fact]
    public void A_mapped_heading_that_does_not_exist_names_the_nearest()
    {
        using var folder = new TestFolder().With("screening.csv", "badge_no,site,collected_at,result\np1,North,2026-01-05,neg\n");
        var settings = TestFolder.Screening(new ExportSettings { Columns = ImmutableSortedDictionary<string, string>.Empty.Add("person", "badge") });
        var found = folder.Refused(settings).Should().ContainSingle().Subject;
        found.Code.Should().Be(ReadingDiagnostics.MappedHeadingMissing);
        found.Message.Should().Contain("\"badge_no\"");
    }

    [Fact]
    public void A_column_that_the_export_does_not_have_cannot_be_mapped()
    {
        using var folder = new TestFolder().With("screening.csv", TestFolder.Headings + Row);
        var settings = TestFolder.Screening(new ExportSettings { Columns = ImmutableSortedDictionary<string, string>.Empty.Add("colour", "site") });
        folder.Refused(settings).Should().ContainSingle().Which.Code.Should().Be(ReadingDiagnostics.UnknownColumn);
    }

    [Fact]
    public void A_word_cannot_be_given_a_meaning_that_no_column_has()
    {
        using var folder = new TestFolder().With("screening.csv", TestFolder.Headings + Row);
        var settings = TestFolder.Screening(new ExportSettings { Words = ImmutableSortedDictionary<string, string>.Empty.Add("nil", "negatve").Add("j", "yes") });
        var found = folder.Refused(settings).Should().ContainSingle().Subject;
        found.Code.Should().Be(ReadingDiagnostics.UnknownMeaning);
        found.Message.Should().Contain("\"negatve\"").And.Contain("negative, positive, inconclusive, invalid");
    }

    [Fact]
    public void Times_with_and_without_offsets_need_a_time_zone()
    {
        using var folder = new TestFolder()
            .With("screening.csv", TestFolder.Headings + Row)
            .With("confirmatory.csv", "person,collected_at,result\np1,2026-01-05T09:00+01:00,neg\n");
        var found = folder.Refused().Should().ContainSingle().Subject;
        found.Code.Should().Be(ReadingDiagnostics.MixedOffsets);
        found.Message.Should().Contain("line 2 of screening.csv").And.Contain("line 2 of confirmatory.csv");
        folder.Read(new ProgramSettings { TimeZone = "Europe/Vienna" }).Diagnostics.Should().BeEmpty();
    }

    [Fact]
    public void An_unknown_time_zone_is_an_error()
    {
        using var folder = new TestFolder().With("screening.csv", TestFolder.Headings + Row);
        folder.Refused(new ProgramSettings { TimeZone = "Europe/Atlantis" }).Should().ContainSingle().Which.Code.Should().Be(ReadingDiagnostics.UnknownTimeZone);
    }

    [Theory]
    [InlineData("person,site,collected_at,result\nAda Example,North,2026-01-05,neg\n", "person", "a name")]
    [InlineData("person,site,collected_at,result\nada@example.org,North,2026-01-05,neg\n", "person", "an e-mail address")]
    [InlineData("person,site,collected_at,result,operator\np1,North,2026-01-05,neg,202-555-0123\n", "operator", "a telephone number")]
    [InlineData("person,site,collected_at,result\n219-09-9999,North,2026-01-05,neg\n", "person", "a social security or national insurance number")]
    public void Columns_that_name_people_are_refused_with_advice(string text, string column, string kind)
    {
        using var folder = new TestFolder().With("screening.csv", text);
        var found = folder.Refused().Should().ContainSingle().Subject;
        found.Code.Should().Be(ReadingDiagnostics.NamesPeople);
        found.Column.Should().Be(column);
        found.Message.Should().Contain(kind).And.Contain("keyed pseudonyms");
    }

    [Fact]
    public void No_message_and_no_reason_ever_repeats_a_cell()
    {
        const string Secret = "Zzyzx";
        using var folder = new TestFolder().With("screening.csv",
            "person,site,collected_at,result,specimen,symptomatic\n"
            + $"p1,North,{Secret},neg,,\np2,North,2026-01-05,{Secret},,\np3,North,2026-01-05,neg,{Secret},{Secret}\n\"{Secret}\"x,North,2026-01-05,neg,,\n");
        var reading = folder.Read();
        reading.SetAside.Should().HaveCount(3);
        reading.Diagnostics.Select(found => found.Message).Concat(reading.SetAside.Select(row => row.Reason + row.Text))
            .Concat(reading.Understanding.SelectMany(export => export.Columns).SelectMany(column => column.Words).Select(word => word.Word))
            .Should().NotContain(text => text.Contains(Secret, StringComparison.OrdinalIgnoreCase));
    }

    [Fact]
    public void A_broken_file_leaves_nothing_locked()
    {
        using var folder = new TestFolder().With("screening.csv", TestFolder.Headings + "p1,\"North,2026-01-05,neg\n");
        folder.Refused();
        File.Delete(Path.Combine(folder.Path, "screening.csv"));
    }

    private static byte[] RandomBytes(int length)
    {
        var bytes = new byte[length];
        new Random(20_260_105).NextBytes(bytes);
        return bytes;
    }
}
