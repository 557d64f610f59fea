using System.Globalization;
using System.Text;
using ScreenStats.Counting.Diagnostics;
using ScreenStats.Counting.Ledger;

namespace ScreenStats.Records.Tests.Formats;

public class FileFormatTests
{
    private const string Rows = "p1,Nörd,2026-01-05T08:00,neg\np2,Nörd,2026-01-05T08:05,pos\n";

    private static readonly Encoding Western = CodePagesEncodingProvider.Instance.GetEncoding(1252)!;

    public static TheoryData<string, byte[]> Encodings => new()
    {
        { "UTF-8", Encoding.UTF8.GetBytes(TestFolder.Headings + Rows) },
        { "UTF-8 with byte order mark", [0xEF, 0xBB, 0xBF, .. Encoding.UTF8.GetBytes(TestFolder.Headings + Rows)] },
        { "UTF-16 little endian", [0xFF, 0xFE, .. Encoding.Unicode.GetBytes(TestFolder.Headings + Rows)] },
        { "UTF-16 big endian", [0xFE, 0xFF, .. Encoding.BigEndianUnicode.GetBytes(TestFolder.Headings + Rows)] },
        { "Windows-1252", Western.GetBytes(TestFolder.Headings + Rows) },
    };

    [Theory]
    [MemberData(nameof(Encodings))]
    public void Every_encoding_of_the_contract_gives_the_same_text(string name, byte[] bytes)
    {
        using var folder = new TestFolder().With("screening.csv", bytes);
        var reading = folder.Read();
        reading.Tally.Cells.Screens.Should().OnlyContain(cell => cell.Site == "Nörd");
        TestFolder.Outcomes(reading).Should().Equal(1, 1, 0, 0);
        reading.Understanding[0].Files[0].Encoding.Should().Be(name);
        reading.Diagnostics.Any(diagnostic => diagnostic.Code == ReadingDiagnostics.ReadAsWindows1252).Should().Be(name == "Windows-1252");
    }

    [Fact]
    public void A_file_that_stops_being_UTF_8_far_behind_its_beginning_is_read_as_Windows_1252_from_its_beginning()
    {
        var text = new StringBuilder(TestFolder.Headings);
        for (var i = 0; i < 60_000; i++) text.Append(CultureInfo.InvariantCulture, $"p{i},North,2026-01-05T08:00,neg\n");
        using var folder = new TestFolder().With("screening.csv", Western.GetBytes(text.Append("p1,Nörd,2026-01-05T09:00,pos\n").ToString()));
        var reading = folder.Read();
        TestFolder.Outcomes(reading).Should().Equal(60_000, 1, 0, 0);
        reading.Tally.Cells.Screens.Should().Contain(cell => cell.Site == "Nörd");
        reading.Diagnostics.Should().ContainSingle(diagnostic => diagnostic.Code == ReadingDiagnostics.ReadAsWindows1252);
    }

    [Theory]
    [InlineData(',', "comma")]
    [InlineData(';', "semicolon")]
    [InlineData('\t', "tab")]
    [InlineData('|', "vertical bar")]
    public void Every_delimiter_of_the_contract_is_found(char delimiter, string name)
    {
        using var folder = new TestFolder().With("screening.csv", (TestFolder.Headings + Rows).Replace(',', delimiter));
        var reading = folder.Read();
        reading.Understanding[0].Files[0].Delimiter.Should().Be(name);
        TestFolder.Outcomes(reading).Should().Equal(1, 1, 0, 0);
    }

    [Fact]
    public void Headings_that_mean_something_decide_the_delimiter_against_many_others()
    {
        using var folder = new TestFolder().With("screening.csv",
            "person;site;collected_at;result;a,b,c,d,e,f,g\np1;North;2026-01-05;neg;1,2,3,4,5,6,7\n");
        folder.Read().Understanding[0].Files[0].Delimiter.Should().Be("semicolon");
    }

    [Fact]
    public void A_first_line_that_states_the_delimiter_is_no_heading()
    {
        using var folder = new TestFolder().With("screening.csv", "sep=;\r\n" + (TestFolder.Headings + Rows + "p3;North;not a date;neg\n").Replace(',', ';'));
        var reading = folder.Read();
        TestFolder.Outcomes(reading).Should().Equal(1, 1, 0, 0);
        reading.SetAside.Should().ContainSingle().Which.Line.Should().Be(5);
    }

    [Theory]
    [InlineData("\n")]
    [InlineData("\r\n")]
    [InlineData("\r")]
    public void Line_ends_blank_lines_and_a_last_line_without_end_make_no_difference(string lineEnd)
    {
        var text = ("\n" + TestFolder.Headings + "\n\n" + Rows + "\np3,North,bad,neg").Replace("\n", lineEnd, StringComparison.Ordinal);
        using var folder = new TestFolder().With("screening.csv", text);
        var reading = folder.Read();
        TestFolder.Rows(reading).Should().Be(3);
        reading.SetAside.Should().ContainSingle().Which.Line.Should().Be(8);
    }

    [Fact]
    public void Quoted_fields_hold_delimiters_quotes_and_line_breaks()
    {
        using var folder = new TestFolder().With("screening.csv",
            TestFolder.Headings + "\"p,1\",\"The \"\"old\"\" \nworks\",\"2026-01-05\",neg\np2,x,bad,neg\n");
        var reading = folder.Read();
        reading.Tally.Cells.Screens.Should().ContainSingle().Which.Site.Should().Be("The \"old\" \nworks");
        reading.SetAside.Should().ContainSingle().Which.Line.Should().Be(4);
    }

    [Fact]
    public void Several_files_are_one_export_in_ordinal_order_of_their_names()
    {
        using var folder = new TestFolder()
            .With("screening-b.csv", TestFolder.Headings + "p2,North,2026-01-05T08:00,pos\n")
            .With("screening-B.csv", "result;site;badge;collected_at\nneg;North;p1;2026-01-05T09:00\n")
            .With("screening.log", "not an export");
        var reading = folder.Read();
        reading.Inputs.Select(input => input.Name).Should().Equal("screening-B.csv", "screening-b.csv");
        TestFolder.Outcomes(reading).Should().Equal(1, 1, 0, 0);
    }

    [Fact]
    public void Inputs_carry_the_SHA_256_of_their_bytes()
    {
        using var folder = new TestFolder().With("screening.csv", TestFolder.Headings + Rows);
        var input = folder.Read().Inputs.Single();
        var bytes = File.ReadAllBytes(Path.Combine(folder.Path, "screening.csv"));
        input.Sha256.Should().Be(Convert.ToHexStringLower(System.Security.Cryptography.SHA256.HashData(bytes)));
        input.Bytes.Should().Be(bytes.Length);
    }

    [Fact]
    public void Set_aside_rows_keep_their_text_only_on_request()
    {
        using var folder = new TestFolder().With("screening.csv", TestFolder.Headings + Rows + "p3,\"No\nrth\",bad,neg\n");
        folder.Read().SetAside.Single().Text.Should().BeNull();
        folder.Read(options: new ReadOptions { SetAsideText = true }).SetAside.Single().Text.Should().Be("p3,\"No\nrth\",bad,neg");
    }

    [Fact]
    public void A_row_with_too_many_fields_is_set_aside_and_one_with_too_few_has_blanks()
    {
        using var folder = new TestFolder().With("screening.csv",
            "person,site,collected_at,result,lot\np1,North,2026-01-05,neg\np2,North,2026-01-05,neg,L1,x\np3,North,2026-01-05,neg,L1,,\np4,North\n,,,,\n");
        var reading = folder.Read();
        TestFolder.Rows(reading, LedgerEntry.Counted).Should().Be(2);
        reading.SetAside.Select(row => (row.Line, row.Code)).Should().Equal(
            (3, ReadingDiagnostics.TooManyFields), (5, ReadingDiagnostics.MissingValue), (6, ReadingDiagnostics.BlankRow));
    }

    [Fact]
    public void Text_behind_a_closing_quote_sets_its_row_aside()
    {
        using var folder = new TestFolder().With("screening.csv", TestFolder.Headings + Rows + "\"p3\"x,North,2026-01-05,neg\np4,5\" pipe,2026-01-06,neg\n");
        var reading = folder.Read();
        reading.SetAside.Should().ContainSingle().Which.Code.Should().Be(ReadingDiagnostics.MalformedRow);
        reading.Tally.Cells.Screens.Should().Contain(cell => cell.Site == "5\" pipe");
    }
}
