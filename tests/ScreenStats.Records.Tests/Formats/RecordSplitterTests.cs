using System.Text;
using CsCheck;
using ScreenStats.Records.Formats;

namespace ScreenStats.Records.Tests.Formats;

public class RecordSplitterTests
{
    public static TheoryData<string, string> Texts => new()
    {
        { "a,b\nc,d\n", "a|b/c|d" },
        { "a,b\r\nc,d\r\n", "a|b/c|d" },
        { "a,b\rc,d", "a|b/c|d" },
        { "a,b\nc,d", "a|b/c|d" },
        { "\n\na,b\n\n\nc,d\n\n", "a|b/c|d" },
        { "\"a,1\",b\n", "a,1|b" },
        { "\"a\nb\",c\n", "a\nb|c" },
        { "\"a\r\nb\",c\n", "a\r\nb|c" },
        { "\"a\"\"b\",c\n", "a\"b|c" },
        { "\"\",\"\"\n", "|" },
        { ",\n", "|" },
        { "a\"b,c\n", "a\"b|c" },
        { " \"a\",b\n", " \"a\"|b" },
        { "a,\"b\"", "a|b" },
        { "é,\"ü,ü\"\n", "é|ü,ü" },
    };

    [Theory]
    [MemberData(nameof(Texts))]
    public void Text_is_split_by_the_rules_of_RFC_4180(string text, string expected) =>
        // RFC 4180 (2005), section 2, rules 1 to 7; blank lines and a lone CR as line end go beyond it.
        string.Join("/", Split(text).Select(record => string.Join("|", record.Fields))).Should().Be(expected);

    [Theory]
    [InlineData("a,\"b\"c\n", true, false)]
    [InlineData("a,\"b\" ,c\n", true, false)]
    [InlineData("a,\"b\nc\"d\n", true, true)]
    [InlineData("a\"x,\"b\nc\"d\n", true, true)]
    [InlineData("a,\"b", true, false)]
    [InlineData("a\"b,c\n", false, false)]
    [InlineData("a,\"b\nc\",d\n", false, false)]
    public void A_fault_of_quotes_is_seen_even_behind_a_harmless_quote(string text, bool malformed, bool spans)
    {
        var record = Split(text).Should().ContainSingle().Subject;
        record.Fault.Malformed.Should().Be(malformed);
        record.Fault.Spans.Should().Be(spans);
    }

    [Fact]
    public void A_record_knows_the_physical_line_it_starts_on() =>
        Split("h\n\n\"a\nb\"\r\n\r\nc\n").Select(record => record.Line).Should().Equal(1, 3, 6);

    [Fact]
    public void The_line_of_the_quote_that_opened_a_faulty_field_is_known()
    {
        var fault = Split("a,\"b\nc\",\"d\ne\"f\n").Single().Fault;
        fault.LineBreaksBefore.Should().Be(1);
    }

    [Fact]
    public void Written_records_are_read_back_whatever_is_in_them()
    {
        var field = Gen.String[Gen.Char["a,\"\n\r; é€"], 0, 8];
        field.Array[1, 5].Array[1, 6].Sample(records =>
        {
            // A record of one empty field is a blank line, which is no record.
            var written = records.Where(record => record.Length > 1 || record[0].Length > 0).ToArray();
            var text = string.Concat(written.Select(record => string.Join(",", record.Select(Quoted)) + "\r\n"));
            var read = Split(text);
            return read.Count == written.Length && read.Zip(written).All(pair => pair.First.Fields.SequenceEqual(pair.Second) && !pair.First.Fault.Malformed);
        });
    }

    [Fact]
    public void Blocks_of_any_length_give_the_same_records_as_the_whole()
    {
        var text = Gen.String[Gen.Char["ab,\"\n\r"], 0, 60];
        Gen.Select(text, Gen.Int[1, 24]).Sample((whole, length) =>
        {
            var bytes = Encoding.UTF8.GetBytes(whole);
            var path = Path.GetTempFileName();
            try
            {
                File.WriteAllBytes(path, bytes);
                var expected = Split(whole);
                var got = new List<Record>();
                using var blocks = new BlockReader(path, TextEncoding.Utf8, (byte)',', length);
                using var splitter = new RecordSplitter((byte)',');
                var block = new Block();
                var line = 1;
                var offset = 0;
                try
                {
                    while (blocks.Next(block))
                    {
                        block.SourceOffset.Should().Be(offset);
                        splitter.Load(block.Buffer, 0, block.Length);
                        while (splitter.Next()) got.Add(Take(splitter, line));
                        line += splitter.LineBreaks;
                        offset += block.Length;
                    }
                }
                catch (BrokenFileException broken)
                {
                    // The file ends inside quotes: the last record of the whole is the one that is never closed.
                    bytes[broken.Utf8Offset].Should().Be((byte)'"');
                    expected[^1].Fault.Malformed.Should().BeTrue();
                    expected.RemoveRange(got.Count, expected.Count - got.Count);
                }

                if (expected.Any(record => record.Fault.Spans)) return;
                got.Select(Shown).Should().Equal(expected.Select(Shown));
            }
            finally
            {
                File.Delete(path);
            }
        }, iter: 2000);
    }

    private static string Shown(Record record) => $"{record.Line}:{string.Join("|", record.Fields)}";

    private static string Quoted(string field) => field.AsSpan().IndexOfAny("\",\r\n") < 0 ? field : $"\"{field.Replace("\"", "\"\"", StringComparison.Ordinal)}\"";

    private static List<Record> Split(string text)
    {
        var bytes = Encoding.UTF8.GetBytes(text);
        using var splitter = new RecordSplitter((byte)',');
        splitter.Load(bytes, 0, bytes.Length);
        var records = new List<Record>();
        while (splitter.Next()) records.Add(Take(splitter, 1));
        return records;
    }

    private static Record Take(RecordSplitter splitter, int firstLine) => new(
        firstLine + splitter.LineBreaksBefore,
        [.. Enumerable.Range(0, splitter.FieldCount).Select(field => Encoding.UTF8.GetString(splitter.Field(field)))],
        splitter.Fault);

    private sealed record Record(int Line, string[] Fields, QuoteFault Fault);
}
